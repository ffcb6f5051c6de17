/** A part of a long list, under a heading that says what it is about; a list that is short is one part without. */
export type Part<S> = { about: string | null; statements: S[] };

/** A tired reader keeps about seven things apart (Miller 1956; CDC Clear Communication Index, item 8). */
export const mostTogether = 7;

/** A list as parts of at most seven: by what they are about, and what is left of a part that is longer under "more". */
export function inParts<S extends { about?: string }>(statements: readonly S[]): Part<S>[] {
  if (statements.length <= mostTogether)
    return statements.length > 0 ? [{ about: null, statements: [...statements] }] : [];
  const subjects = [...new Set(statements.map(({ about }) => about ?? null))];
  return subjects.flatMap((about) =>
    chunks(
      statements.filter((one) => (one.about ?? null) === about),
      about,
    ),
  );
}

function chunks<S>(statements: readonly S[], about: string | null): Part<S>[] {
  const count = Math.ceil(statements.length / mostTogether);
  const size = Math.ceil(statements.length / count);
  return Array.from({ length: count }, (_, i) => ({
    about: i === 0 ? about : "more",
    statements: statements.slice(i * size, (i + 1) * size),
  }));
}

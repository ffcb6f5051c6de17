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

const chunks = <S>(statements: readonly S[], about: string | null): Part<S>[] =>
  evenly(statements, mostTogether).map((part, i) => ({ about: i === 0 ? about : "more", statements: part }));

/** A list in as few parts of at most so many as hold it, each about as long as the others. */
export function evenly<T>(all: readonly T[], most: number): T[][] {
  const count = Math.ceil(all.length / most);
  const size = Math.ceil(all.length / count);
  return Array.from({ length: count }, (_, i) => all.slice(i * size, (i + 1) * size));
}

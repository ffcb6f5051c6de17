import type { GlossaryRow } from "#tables/glossary.js";

/** Every form of a hard word, and plain words for it. */
export type Term = { forms: RegExp; plain: string };
export type Found = { given: string; plain: string; index: number };

/** The hard words of a language. */
export const glossaryOf = (rows: readonly GlossaryRow[], language: string): Term[] =>
  rows.flatMap(({ words }) => {
    const own = words[language];
    if (!own) return [];
    const forms = own.forms.map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
    return [
      { forms: new RegExp(`(?<![\\p{L}\\p{N}])(?:${forms.join("|")})(?![\\p{L}\\p{N}])`, "giu"), plain: own.plain },
    ];
  });

/** The hard words of a text, where each stands. */
export const hardWords = (text: string, glossary: readonly Term[]): Found[] =>
  glossary.flatMap(({ forms, plain }) =>
    [...text.matchAll(forms)].map(({ 0: given, index }) => ({ given, plain, index })),
  );

/** Terms that some line says in plain words too: they are explained, and may be used. */
export const explainedIn = (lines: readonly string[], glossary: readonly Term[]): Set<Term> =>
  new Set(
    glossary.filter(({ forms, plain }) =>
      lines.some((line) => line.toLowerCase().includes(plain.toLowerCase()) && new RegExp(forms).test(line)),
    ),
  );

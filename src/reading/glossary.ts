import type { Locales } from "#locale/locales.js";

/** A hard word in every form of it, and plain words for it. */
export type Term = { forms: RegExp; plain: string };
export type Found = { given: string; plain: string; index: number };

/** The glossary of a language: locales/<tag>/glossary.json, forms parted by a bar: "abscess|abscesses". */
export function glossaryOf({ messages }: Locales, language: string): Term[] {
  return Object.values(messages[language]?.["glossary"] ?? {}).flatMap((entry) => {
    if (typeof entry === "string") return [];
    const { terms, plain } = entry;
    if (typeof terms !== "string" || typeof plain !== "string") return [];
    const forms = terms.split("|").map((form) => form.trim().replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
    return [{ forms: new RegExp(`(?<![\\p{L}\\p{N}])(?:${forms.join("|")})(?![\\p{L}\\p{N}])`, "giu"), plain }];
  });
}

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

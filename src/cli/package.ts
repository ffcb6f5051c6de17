import { type ClinicReview, type Facts, type House, languages, type OutputFile, record } from "#index.js";
import { version } from "#io/shipped.js";
import type { Settled } from "#problems/settle.js";
import type { Text } from "./case.js";
import type { Drawn } from "./draw.js";

export type Contents = {
  texts: readonly Text[];
  facts: Facts;
  drawn: readonly Drawn[];
  settled: Settled;
  /** The clinic's own, of the languages. */
  reviews?: readonly ClinicReview[];
};

/** All files of one plan: those of each language, in a folder of its own where there are several, and their record. */
export async function packageOf(contents: Contents, house: House): Promise<OutputFile[]> {
  const { drawn, facts, reviews = [], settled, texts } = contents;
  const text = (is: Text["is"]) => texts.find((one) => one.is === is) ?? null;
  const files = drawn.flatMap(({ asked, files }) =>
    drawn.length === 1 ? files : files.map(({ name, bytes }) => ({ name: `${asked}/${name}`, bytes })),
  );
  const kept = record({
    version: await version(),
    caseId: facts.caseId,
    revision: facts.revision,
    plan: text("plan") ?? { file: "", bytes: new Uint8Array() },
    clinic: text("clinic"),
    prices: text("prices"),
    languages: reviewStates(drawn, house, reviews),
    settled,
    files,
  });
  return [...files, { name: "record.json", bytes: new TextEncoder().encode(kept) }];
}

/** How far the translation of each language of a package has been read. */
export function reviewStates(drawn: readonly Drawn[], house: House, reviews: readonly ClinicReview[]) {
  const known = languages(house, reviews);
  const stateOf = (language: string) => known.find(({ tag }) => tag === language)?.state ?? "unreviewed";
  return drawn.map(({ language }) => ({ language, review: reviewWords[stateOf(language)] }));
}

const reviewWords = { original: "original", reviewed: "reviewed", unreviewed: "not reviewed" } as const;

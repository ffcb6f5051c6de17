import { type ClinicReview, type Facts, type House, type OutputFile, record, reviewOf } from "#index.js";
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

/** All that is made of one plan. files: what is handed over, and its record, the last; forStaff: what stays at the clinic. */
export type Package = { files: OutputFile[]; forStaff: OutputFile[] };

/** The package of one plan: the files of each language, in a folder of its own where there are several, and their record. */
export async function packageOf(contents: Contents, house: House): Promise<Package> {
  const { drawn, facts, reviews = [], settled, texts } = contents;
  const text = (is: Text["is"]) => texts.find((one) => one.is === is) ?? null;
  const all = (kind: keyof Package) =>
    drawn.flatMap(({ asked, [kind]: made }) =>
      drawn.length === 1 ? made : made.map(({ name, bytes }) => ({ name: `${asked}/${name}`, bytes })),
    );
  const [files, forStaff] = [all("files"), all("forStaff")];
  const kept = record({
    version: await version(),
    caseId: facts.caseId,
    revision: facts.revision,
    plan: text("plan") ?? { file: "", bytes: new Uint8Array() },
    clinic: text("clinic"),
    prices: text("prices"),
    logo: text("logo"),
    overrides: house.overrides,
    languages: reviewStates(drawn, house, reviews),
    settled,
    files,
    forStaff,
  });
  return { files: [...files, { name: "record.json", bytes: new TextEncoder().encode(kept) }], forStaff };
}

/** How far the translation of each language of a package has been read. */
export function reviewStates(drawn: readonly Drawn[], house: House, reviews: readonly ClinicReview[]) {
  return drawn.map(({ language }) => ({ language, review: reviewWords[reviewOf(house, language, reviews)] }));
}

const reviewWords = { original: "original", reviewed: "reviewed", unreviewed: "not reviewed" } as const;

import { isAbsolute, relative, resolve } from "node:path";
import type { Facts, House, Outcome, OutputFile, Source } from "#index.js";
import { shippedHashes, versions } from "#io/made-with.js";
import { sha256 } from "#io/sha256.js";
import { shippedFiles } from "#io/shipped.js";
import type { Built, Made, SourceKept, Sources } from "#journal/entry.js";
import type { Case, Text } from "./case.js";
import { addToCase, canKeep } from "./case-folder.js";
import type { Drawn } from "./draw.js";
import { follow } from "./follow.js";
import type { BuildOptions } from "./options.js";
import { type Package, reviewStates } from "./package.js";

/** A package that was built: from what, and what it holds. */
export type KeptBuild = {
  one: Case;
  facts: Facts;
  drawn: readonly Drawn[];
  made: Package;
  options: BuildOptions;
};

/**
 * Hands a build out and keeps it in its case folder: the texts it was made from, its facts, its files, and one line of the
 * journal. A build that is the last one over again, on the same day, is no new line. Nothing is handed out that there was no
 * room to keep, and what was not handed out has no line.
 */
export async function keepBuild<T>(
  folder: string,
  house: House,
  build: KeptBuild,
  handOut: () => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const { one, facts, made } = build;
  const told = asBytes(facts);
  const texts = [one.texts, ...one.past].flat();
  const reviews = one.reviews.source;
  const entry = await entryOf(folder, house, build);
  const kept = [
    ...texts.map((text) => ({ name: nameOf(text), bytes: text.bytes })),
    ...(reviews ? [{ name: nameOf(reviews), bytes: reviews.bytes }] : []),
    { name: "facts.json", bytes: told },
    ...made.files,
    ...made.forStaff,
  ];
  const handed = await follow(await canKeep(folder, facts.caseId, kept), handOut);
  return follow(handed, async (value) => {
    const noted = await addToCase(folder, facts.caseId, [], (before) => {
      const last = before.findLast(({ what }) => what === "built");
      const same = last && JSON.stringify({ ...last, at: "" }) === JSON.stringify({ ...entry, at: "" });
      return same ? [] : [entry];
    });
    return { value: noted.value && value, problems: noted.problems };
  });
}

/** The ending a kept text has: that of the file it came from. */
export const nameOf = ({ file }: Pick<Source, "file">): string => (file === "-" ? "plan.json" : file);

async function entryOf(folder: string, house: House, { one, facts, drawn, made, options }: KeptBuild): Promise<Built> {
  const from = (file: string) =>
    file === "-" ? null : isAbsolute(file) ? file : relative(resolve(folder), resolve(file));
  const sourceOf = ({ file, bytes }: Source): SourceKept => ({ file, from: from(file), sha256: sha256(bytes) });
  const sourcesOf = (texts: readonly Text[]): Sources => {
    const text = (is: Text["is"]) => texts.find((one) => one.is === is);
    const [plan, clinic, prices, logo] = [text("plan"), text("clinic"), text("prices"), text("logo")];
    return {
      plan: sourceOf(plan ?? { file: "", bytes: new Uint8Array() }),
      clinic: clinic ? sourceOf(clinic) : null,
      prices: prices ? sourceOf(prices) : null,
      ...(logo ? { logo: sourceOf(logo) } : {}),
    };
  };
  const own = one.house.overrides.flatMap(({ name, file }) => {
    const text = one.texts.find((each) => each.is === "own" && each.file === file);
    return text ? [{ name, ...sourceOf(text) }] : [];
  });
  return {
    what: "built",
    at: new Date().toISOString(),
    on: options.today,
    case: facts.caseId,
    revision: facts.revision,
    paper: facts.discharged,
    sources: sourcesOf(one.texts),
    earlier: one.past.map(sourcesOf),
    reviews: one.reviews.source && sourceOf(one.reviews.source),
    ...(own.length > 0 ? { overrides: own } : {}),
    asked: {
      languages: options.language,
      formats: options.format,
      paper: options.paper ?? null,
      only: options.only ?? null,
      large: options.largePrint ?? false,
      staffToo: options.staffLanguage ?? false,
      proof: options.proof ?? false,
      allow: options.allow.map(({ problem, for: what, reason }) => ({
        problem,
        ...(what === undefined ? {} : { for: what }),
        reason,
      })),
    },
    made: await madeWith([...drawn.map(({ language }) => language), facts.clinic.staffLanguage]),
    facts: sha256(asBytes(facts)),
    languages: reviewStates(drawn, house, one.reviews.reviews),
    files: made.files.map(hashed),
    ...(made.forStaff.length > 0 ? { forStaff: made.forStaff.map(hashed) } : {}),
  };
}

const hashed = ({ name, bytes }: OutputFile) => ({ name, sha256: sha256(bytes) });

/** What a package in these languages is made with now; English is what all fall back on. */
export async function madeWith(languages: readonly string[]): Promise<Made> {
  const shipped = await shippedHashes(await shippedFiles());
  const used = (name: string) =>
    !name.startsWith("locales/") || ["en", ...languages].some((tag) => `locales/${tag}-`.startsWith(`${name}-`));
  return {
    versions: await versions(),
    shipped: Object.fromEntries(Object.entries(shipped).filter(([name]) => used(name))),
  };
}

export const asBytes = (facts: Facts): Uint8Array => new TextEncoder().encode(`${JSON.stringify(facts, null, 2)}\n`);

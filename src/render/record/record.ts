import { createHash } from "node:crypto";
import type { Place } from "#problems/place.js";
import type { Problem } from "#problems/problem.js";
import type { Settled } from "#problems/settle.js";

/** What the clinic must be able to show later. */
export type RecordInput = {
  /** Of the tool: "0.1.0". */
  version: string;
  caseId: string;
  revision: number;
  /** The plan as it came; file is its name in the places of problems. */
  plan: Source;
  /** null where the clinic profile is written in the plan. */
  clinic: Source | null;
  /** null where the price list is written in the clinic profile. */
  prices: Source | null;
  /** The clinic's, if it has one. */
  logo?: Source | null;
  /** The clinic's own templates and texts, each by the name of ours it stands for. */
  overrides?: readonly { name: string; file: string; sha256: string; texts?: readonly string[] }[];
  languages: readonly { language: string; review: "original" | "reviewed" | "not reviewed" }[];
  settled: Pick<Settled, "allowed" | "notes">;
  /** Every file that was handed over, but this one. */
  files: readonly File[];
  /** Every file that was made beside them and stays at the clinic. */
  forStaff?: readonly File[];
};
type File = { name: string; bytes: Uint8Array };
type Source = { file: string; bytes: Uint8Array };

/**
 * record.json: what was made from what, and what was gone past and why. The same input gives the same bytes. It adds no name
 * and no address of anybody's: the plan stands under its hash and not under its path, which may hold the owner's name.
 */
export function renderRecord({
  plan,
  clinic,
  prices,
  logo = null,
  overrides = [],
  languages,
  settled,
  files,
  forStaff = [],
  ...input
}: RecordInput): string {
  const told = ({ code, severity, at, values }: Problem, reason: string | null) => ({
    code,
    severity,
    at: placeIn(at, { plan, clinic, prices }, overrides),
    values: Object.fromEntries(Object.entries(values).toSorted(by(([name]) => name))),
    reason,
  });
  const record = {
    format: "hearthsheet-record/1",
    tool: { name: "hearthsheet", version: input.version },
    caseId: input.caseId,
    revision: input.revision,
    plan: { sha256: sha256(plan.bytes) },
    clinic: clinic && { sha256: sha256(clinic.bytes) },
    prices: prices && { sha256: sha256(prices.bytes) },
    ...(logo ? { logo: { sha256: sha256(logo.bytes) } } : {}),
    ...(overrides.length > 0
      ? { overrides: overrides.map(({ file: _file, ...one }) => one).toSorted(by(({ name }) => name)) }
      : {}),
    languages: languages.toSorted(by(({ language }) => language)).map(({ language, review }) => ({ language, review })),
    problems: [
      ...settled.allowed.map(({ problem, reason }) => told(problem, reason)),
      ...settled.notes.map((problem) => told(problem, null)),
    ],
    files: listOf(files),
    ...(forStaff.length > 0 ? { forStaff: listOf(forStaff) } : {}),
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}

const listOf = (files: readonly File[]) =>
  files
    .toSorted(by(({ name }) => name))
    .map(({ name, bytes }) => ({ name, size: bytes.length, sha256: sha256(bytes) }));

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

function placeIn(
  { file, line, column, length }: Place,
  sources: Record<string, Source | null>,
  overrides: NonNullable<RecordInput["overrides"]>,
) {
  const own = overrides.find((one) => one.file === file);
  const [within = own ? `overrides/${own.name}` : "tables"] =
    Object.entries(sources).find(([, source]) => source?.file === file) ?? [];
  return { in: within, line, column, length };
}

/** Orders by the code units of a key: the same on every machine, whatever its language. */
const by =
  <T>(key: (one: T) => string) =>
  (a: T, b: T): number =>
    key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0;

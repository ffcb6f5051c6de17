import { readFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { type Outcome, problem } from "#problems/problem.js";
import { sha256 } from "./sha256.js";

/** What a build wrote, as its record tells it. */
export type BuiltPackage = {
  caseId: string;
  revision: number;
  languages: { language: string; review: string }[];
  /** The letter's bytes, as they were written: any change since is a problem. */
  letter: Uint8Array;
};

type Recorded = Pick<BuiltPackage, "caseId" | "revision" | "languages"> & { files: { name: string; sha256: string }[] };

/**
 * Reads the letter of a built package. folder: where the package is, or the folder of one language in it.
 * Problems: "package-missing", "package-no-letter", "package-several-letters", "package-changed".
 */
export async function readPackage(folder: string): Promise<Outcome<BuiltPackage>> {
  const at = { file: folder, line: 1, column: 1, length: 1 };
  const own = await readRecord(folder);
  const above = own ? null : await readRecord(dirname(resolve(folder)));
  const record = own ?? above;
  if (!record) return { value: null, problems: [problem("package-missing", at, { path: folder })] };
  const prefix = above ? `${basename(resolve(folder))}/` : "";
  const letters = record.files.filter(({ name }) => name.startsWith(prefix) && name.endsWith(".eml"));
  const [named] = letters;
  if (!named) return { value: null, problems: [problem("package-no-letter", at, { path: folder })] };
  if (letters.length > 1) {
    const known = letters.map(({ name }) => join(folder, dirname(name)));
    return { value: null, problems: [problem("package-several-letters", at, { path: folder, known })] };
  }
  const letter = await readFile(join(folder, named.name.slice(prefix.length))).catch(() => null);
  if (!letter || sha256(letter) !== named.sha256)
    return { value: null, problems: [problem("package-changed", at, { path: join(folder, basename(named.name)) })] };
  const { caseId, revision, languages } = record;
  return { value: { caseId, revision, languages, letter }, problems: [] };
}

async function readRecord(folder: string): Promise<Recorded | null> {
  try {
    const record = JSON.parse(await readFile(join(folder, "record.json"), "utf8"));
    const { format, caseId, revision, languages, files } = record;
    const whole =
      typeof format === "string" &&
      format.startsWith("hearthsheet-record/") &&
      typeof caseId === "string" &&
      Number.isInteger(revision) &&
      [languages, files].every(Array.isArray);
    return whole ? { caseId, revision, languages, files } : null;
  } catch {
    return null;
  }
}

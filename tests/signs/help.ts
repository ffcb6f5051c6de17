import { readdirSync, readFileSync } from "node:fs";
import { computeCare } from "#compute/signs/care.js";
import { readPlan } from "#plan/read-plan.js";
import { placeText } from "#problems/place.js";
import type { Problem } from "#problems/problem.js";
import { openTables } from "#tables/tables.js";

const jsonUnder = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".json"))
    .map((name) => `${folder}/${name}`);

/** The files of shared/, by path. */
export const files = Object.fromEntries(jsonUnder("shared").map((path) => [path, readFileSync(path, "utf8")]));

const read = openTables(files);
if (!read.value) throw new Error(JSON.stringify(read.problems));
export const tables = read.value.care;

const clinic = readFileSync("examples/clinic.yaml", "utf8");
const prices = readFileSync("examples/prices.yaml");
const bytes = (text: string) => new TextEncoder().encode(text);

/** A plan with this care, one line of it an entry; patient and the rest of the file may be changed. */
export function planWith(
  care: readonly string[],
  patient = "species: dog, sex: female",
  rest = "",
  reason = "An abscess.",
) {
  const text = `format: hearthsheet/1
clinic: clinic.yaml
discharged: 2026-03-02 16:30
patient: { name: Bramble, weight: 12 kg, ${patient} }
owner: { name: Lucía Ferrer, language: es }
reason: ${reason}
care:
${care.map((line) => `  - { ${line} }`).join("\n")}
${rest}`;
  const { value, problems } = readPlan(
    {
      plan: { file: "plan.yaml", bytes: bytes(text) },
      clinic: { file: "clinic.yaml", bytes: bytes(clinic) },
      prices: { file: "prices.yaml", bytes: prices },
    },
    { today: "2026-03-02" },
  );
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

/** What follows from this care; throws where it is stopped. */
export function care(lines: readonly string[], patient?: string, known = tables) {
  const { value, problems } = computeCare(planWith(lines, patient), known);
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

/** Problems of this care, as "code place". */
export const told = (lines: readonly string[], patient?: string): string[] =>
  computeCare(planWith(lines, patient), tables).problems.map(seen);

export const seen = ({ code, at }: Problem): string => `${code} ${placeText(at)}`;

export const ids = (statements: readonly { id: string }[]): string[] => statements.map(({ id }) => id);

/** The messages of one file of words, by flat key: "signs.breathing". */
export function wordsOf(tag: string, namespace: string): Record<string, string> {
  const flat = (value: unknown, key: string): [string, string][] =>
    typeof value === "string"
      ? [[key, value]]
      : Object.entries(value as object).flatMap(([name, inner]) => flat(inner, key ? `${key}.${name}` : name));
  return Object.fromEntries(flat(JSON.parse(readFileSync(`locales/${tag}/${namespace}.json`, "utf8")), ""));
}

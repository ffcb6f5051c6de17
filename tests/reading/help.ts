import { readFileSync } from "node:fs";
import { readReading } from "#tables/reading.js";

const path = "shared/reading.json";
export const rules = readReading(readFileSync(path, "utf8"), path).value ?? [];

/** The rule of a language; throws where there is none. */
export function ruleOf(language: string) {
  const rule = rules.find((one) => one.language === language);
  if (!rule) throw new Error(`no reading rule for ${language}`);
  return rule;
}

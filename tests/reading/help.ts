import { readFileSync } from "node:fs";
import { readGlossary } from "#tables/glossary.js";
import { readReading } from "#tables/reading.js";

const text = (path: string) => [readFileSync(path, "utf8"), path] as const;

export const rules = readReading(...text("shared/reading.json")).value ?? [];
export const glossary = readGlossary(...text("shared/glossary.json")).value ?? [];

/** The rule of a language; throws where there is none. */
export function ruleOf(language: string) {
  const rule = rules.find((one) => one.language === language);
  if (!rule) throw new Error(`no reading rule for ${language}`);
  return rule;
}

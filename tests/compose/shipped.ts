import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { compose } from "#compose/compose.js";
import { openTemplates } from "#compose/templates.js";
import type { Facts } from "#compute/facts.js";
import { openLocales } from "#locale/locales.js";

/** The text of every file under a folder, by its path from the top of the repository. */
export function filesIn(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path, readFileSync(path, "utf8")]),
  );
}

const must = <T>({ value, problems }: { value: T | null; problems: unknown[] }): T => {
  if (value === null) throw new Error(JSON.stringify(problems, null, 1));
  return value;
};

export const locales = must(openLocales(filesIn("locales")));
export const templates = must(openTemplates(filesIn("templates"), locales));
export const composed = (facts: Facts, language: string) => compose(facts, { language, templates, locales });

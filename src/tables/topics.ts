import { z } from "zod";
import { type Outcome, problem } from "#problems/problem.js";
import { additionSchema } from "./additions.js";
import { animalSchema } from "./animals.js";
import { bandageSchema } from "./bandages.js";
import type { CareTables } from "./care-tables.js";
import { collarRules } from "./collars.js";
import { conflictSchema } from "./conflicts.js";
import { readTable } from "./json.js";
import { logRowSchema } from "./log.js";
import { ownWordsSchema } from "./own-words.js";
import { siteSchema } from "./sites.js";
import { readStatements } from "./statements.js";
import { strayNames } from "./stray-names.js";
import { strongerSchema } from "./stronger.js";
import { together } from "./together.js";
import { topicSchema } from "./topic.js";

export type { CareTables };

/**
 * Reads the tables of care from their files, by path ("shared/topics/bite-wound.json"); other paths are left alone.
 * Problems: "table-not-json" and "table-row-wrong", the latter also where a row names another that is not there.
 */
export function readCare(files: Record<string, string>): Outcome<CareTables> {
  const table = <T extends z.ZodType>(schema: T, path: string) => readTable(schema, files[path] ?? "", path);
  const paths = Object.keys(files).filter((path) => /^shared\/topics\/[^/]+\.json$/.test(path));
  const topics = together(Object.fromEntries(paths.sort().map((path) => [path, table(topicSchema, path)])));

  const read = together({
    topics: { value: topics.value && Object.values(topics.value), problems: topics.problems },
    statements: readStatements(files),
    sites: table(z.array(siteSchema), "shared/sites.json"),
    bandages: table(z.array(bandageSchema), "shared/bandages.json"),
    animals: table(z.array(animalSchema), "shared/animals.json"),
    additions: table(z.array(additionSchema), "shared/additions.json"),
    stronger: table(z.array(strongerSchema), "shared/stronger.json"),
    conflicts: table(z.array(conflictSchema), "shared/conflicts.json"),
    log: table(z.array(logRowSchema), "shared/log.json"),
    ownWords: table(ownWordsSchema, "shared/own-words.json"),
    collars: table(collarRules, "shared/collars.json"),
  });
  if (!read.value) return read;

  const strays = strayNames(read.value).map(({ file, detail }) =>
    problem("table-row-wrong", { file, line: 1, column: 1, length: 1 }, { detail }),
  );
  return { value: strays.length > 0 ? null : read.value, problems: [...read.problems, ...strays] };
}

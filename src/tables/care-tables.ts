import type { Addition } from "./additions.js";
import type { Animal } from "./animals.js";
import type { Bandage } from "./bandages.js";
import type { CollarRules } from "./collars.js";
import type { Conflict } from "./conflicts.js";
import type { LogRow } from "./log.js";
import type { OwnWords } from "./own-words.js";
import type { Site } from "./sites.js";
import type { Statements } from "./statements.js";
import type { Stronger } from "./stronger.js";
import type { Topic } from "./topic.js";

/** Everything the tool knows about care at home; topics in the order of their names. */
export type CareTables = {
  topics: Topic[];
  statements: Statements;
  sites: Site[];
  bandages: Bandage[];
  animals: Animal[];
  additions: Addition[];
  stronger: Stronger[];
  conflicts: Conflict[];
  ownWords: OwnWords;
  log: LogRow[];
  collars: CollarRules;
};

import { wordsOf } from "#handout/walk.js";
import { lineOf } from "./inlines.js";
import { type Page, sayOn, type Values } from "./page.js";

/** A message as words alone, its values filled in literally, for where there are no nodes. */
export const wordsAloneOn = (page: Page, key: string, values: Values = {}): string =>
  wordsOf(lineOf(sayOn(page, key, values).markdown, page.holes));

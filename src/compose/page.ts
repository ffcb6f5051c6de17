import type { Amount } from "#compute/facts.js";
import type { Inline } from "#handout/handout.js";
import type { Voice } from "#locale/voice.js";
import { fill, MissingWords } from "#locale/words.js";
import type { Place } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import { Fragment, type Holes, newHoles } from "./holes.js";
import { type Origins, originsOf } from "./origins.js";
import type { View } from "./view.js";

/** All that one page is made with: what is true, how it is said, and what went wrong on the way. */
export type Page = {
  view: View;
  voice: Voice;
  holes: Holes;
  origins: Origins;
  /** The languages its owner reads, in order; the page may be in none of them. */
  wanted: readonly string[];
  /** The plan as a whole. */
  plan: Place;
  report: (found: Problem) => void;
};

export function newPage(view: View, voice: Voice, report: Page["report"], wanted = [voice.asked]): Page {
  const plan = { file: view.care[0]?.from.file ?? "plan", line: 1, column: 1, length: 1 };
  return { view, voice, wanted, holes: newHoles(voice.direction), origins: originsOf(view, plan), plan, report };
}

/** What a template may hand to a helper. */
export type Values = Record<string, unknown>;

/**
 * A message as Markdown with its values as holes. Every message may show the animal's {{name}} and has a form for its sex.
 * Words that are missing are reported, and stand out on the page.
 */
export function sayOn(page: Page, key: string, values: Values = {}): Fragment {
  const { name, sex } = page.view.patient;
  const all: Values = { name, ...values };
  const { count, context } = all;
  const chosen = { context: String(context ?? sex), ...(typeof count === "number" ? { count } : {}) };
  const show = (name: string) => {
    if (!Object.hasOwn(all, name) || all[name] === undefined || all[name] === null)
      throw new MissingWords(key, page.voice.language, name);
    return String(valueOn(page, all[name]));
  };
  return new Fragment(worded(page, () => fill(page.voice.message(key, chosen), show)));
}

/** A message with plain values only, as text: for titles, labels and other places without nodes. */
export function plainOn(page: Page, key: string, values: Record<string, string | number> = {}): string {
  const { name, sex } = page.view.patient;
  return worded(page, () => page.voice.say(key, { name, context: sex, ...values }));
}

/** A value as a hole: text as it stands, a number or an amount in the words of the language. */
export function valueOn(page: Page, value: unknown): Fragment {
  if (value instanceof Fragment) return value;
  if (typeof value === "number") return textOn(page, page.voice.number(value));
  if (isAmount(value)) return textOn(page, amountOn(page, value));
  if (typeof value !== "string") throw new TypeError(`no text: ${typeof value}`);
  return textOn(page, value);
}

export const textOn = (page: Page, text: string): Fragment =>
  page.holes.inline(...(text ? [{ kind: "text", text } satisfies Inline] : []));

/** "half a tablet (½)" */
export const amountOn = (page: Page, amount: Amount): string => worded(page, () => page.voice.amount(amount));

const isAmount = (value: unknown): value is Amount =>
  typeof value === "object" && value !== null && "value" in value && "unit" in value;

/** What `make` says; where its words are missing that is reported, and their key stands out on the page. */
function worded(page: Page, make: () => string): string {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof MissingWords)) throw error;
    page.report(missingOn(page, error));
    return `⟦${error.key}⟧`;
  }
}

/** Words that a language does not have, or that lack a value, as a problem. */
export const missingOn = (page: Page, { key, language, value }: MissingWords): Problem =>
  value === null
    ? problem("words-missing", page.plan, { key, language })
    : problem("words-value-missing", page.plan, { key, value, language });

import type { Problem } from "#problems/problem.js";
import type { Voice } from "./voice.js";
import { MissingWords } from "./words.js";

/** A problem in words: what is wrong, and what to do about it. */
export type ToldProblem = { what: string; hint: string };

/**
 * Words a problem: problems:<code>.what and .hint; .hint_none, if there is one, where nothing near is known. Where its words
 * are missing its code and values are told as they are: a problem is never lost.
 */
export function tellProblem({ code, values }: Problem, voice: Voice): ToldProblem {
  const shown = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, show(value, voice)]));
  const empty = Object.values(values).some((value) => Array.isArray(value) && value.length === 0);
  const chosen = empty ? { ...shown, context: "none" } : shown;
  try {
    return { what: voice.say(`problems:${code}.what`, chosen), hint: voice.say(`problems:${code}.hint`, chosen) };
  } catch (error) {
    if (!(error instanceof MissingWords)) throw error;
    return { what: plainly(code, shown), hint: "" };
  }
}

/** "unit-missing (given: 24.6; units: kg or lb)": a problem nobody has put into words must still be told. */
function plainly(code: string, shown: Record<string, string | number>): string {
  const values = Object.entries(shown).map(([name, value]) => `${name}: ${value}`);
  return values.length > 0 ? `${code} (${values.join("; ")})` : code;
}

/** What is counted, as a plan writes it: "10 tablet", also after a dose it comes from and before what it holds. */
const units = ["tablet", "capsule", "drop", "application", "spray", "patch", "unit", "bottle", "tube", "vial", "day"];
const counted = new RegExp(`^(.*: )?(\\d+(?:\\.\\d+)?) (${units.join("|")})( \\(.*\\))?$`, "u");

/** "10 tablet" as "10 tablets", or as the staff's language has it. Anything else is told as it is. */
function showText(text: string, voice: Voice): string {
  const [, before = "", value, unit, after = ""] = counted.exec(text) ?? [];
  if (value === undefined || unit === undefined) return text;
  return `${before}${voice.shortAmount({ value, unit })}${after}`;
}

function show(value: unknown, voice: Voice): string | number {
  if (typeof value === "string") return showText(value, voice);
  if (typeof value === "number") return value;
  if (Array.isArray(value)) return value.length > 0 ? voice.list(value.map(String), "or") : voice.say("problems:none");
  if (typeof value === "object" && value !== null) {
    if ("day" in value) return voice.wholeDay(String(value.day));
    if ("minor" in value && "currency" in value) return voice.money(Number(value.minor), String(value.currency));
  }
  return String(value);
}

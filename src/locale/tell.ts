import type { Problem } from "#problems/problem.js";
import type { Voice } from "./voice.js";

/** A problem in words: what is wrong, and what to do about it. */
export type ToldProblem = { what: string; hint: string };

/** Words a problem: problems:<code>.what and .hint; .hint_none, if there is one, where nothing near is known. */
export function tellProblem({ code, values }: Problem, voice: Voice): ToldProblem {
  const shown = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, show(value, voice)]));
  const empty = Object.values(values).some((value) => Array.isArray(value) && value.length === 0);
  const chosen = empty ? { ...shown, context: "none" } : shown;
  return { what: voice.say(`problems:${code}.what`, chosen), hint: voice.say(`problems:${code}.hint`, chosen) };
}

function show(value: unknown, voice: Voice): string | number {
  if (typeof value === "string" || typeof value === "number") return value;
  if (Array.isArray(value)) return value.length > 0 ? voice.list(value.map(String), "or") : voice.say("problems:none");
  if (typeof value === "object" && value !== null) {
    if ("day" in value) return voice.wholeDay(String(value.day));
    if ("minor" in value && "currency" in value) return voice.money(Number(value.minor), String(value.currency));
  }
  return String(value);
}

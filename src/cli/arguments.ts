import { InvalidArgumentError } from "commander";
import type { Format } from "#index.js";
import { nearest } from "#problems/near.js";
import { codes, isCode } from "#problems/problem.js";
import type { Reason } from "#problems/settle.js";

/** "2026-03-04" and no other way of writing a day. */
export function dayArgument(given: string): string {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(given) ? new Date(`${given}T00:00:00Z`) : null;
  if (!day || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== given)
    throw new InvalidArgumentError("Write a day as 2026-03-04.");
  return given;
}

/** All formats, in the order they are built in: named here again, so that a mistyped command need not load the stages. */
const known: Record<Format, true> = {
  pdf: true,
  html: true,
  text: true,
  ics: true,
  sms: true,
  eml: true,
  labels: true,
};
export const formats = Object.keys(known) as Format[];

/** "pdf,html": each once, in the order of the formats. */
export function formatsArgument(given: string): Format[] {
  const asked = given.split(",").map((name) => name.trim());
  const unknown = asked.find((name) => !formats.some((format) => format === name));
  if (unknown !== undefined) throw new InvalidArgumentError(`Choose from ${formats.join(", ")}, with commas between.`);
  return formats.filter((format) => asked.includes(format));
}

/** Collects languages (BCP 47 tags). */
export function languageArgument(given: string, before: readonly string[] = []): string[] {
  try {
    return [...new Set([...before, ...Intl.getCanonicalLocales(given)])];
  } catch {
    throw new InvalidArgumentError("Write a language as es or es-MX; hearthsheet languages lists them.");
  }
}

/** Collects CODE=reason and CODE:FOR=reason. */
export function allowArgument(given: string, before: readonly Reason[] = []): Reason[] {
  const [, code = "", what, reason = ""] = /^([^=:]*)(?::([^=]*))?=(.*)$/s.exec(given) ?? [];
  if (reason.trim() === "")
    throw new InvalidArgumentError('Write a problem\'s code and why: CODE="reason", or CODE:FOR="reason".');
  if (!isCode(code)) {
    const [near] = nearest(code, codes);
    throw new InvalidArgumentError(`There is no problem of that code.${near ? ` Did you mean ${near}?` : ""}`);
  }
  return [...before, { problem: code, for: what?.trim(), reason: reason.trim() }];
}

/** Standard input holds plans of its own number, so it cannot be counted with others; a plan named twice is one plan. */
export function plansArgument(given: string, before: readonly string[] = []): string[] {
  const plans = [...new Set([...before, given])];
  if (plans.includes("-") && plans.length > 1) throw new InvalidArgumentError("- stands alone, without other plans.");
  return plans;
}

/** How many at once, from 1 to 64. */
export function jobsArgument(given: string): number {
  if (!/^\d{1,2}$/.test(given) || Number(given) < 1 || Number(given) > 64)
    throw new InvalidArgumentError("Write a number from 1 to 64.");
  return Number(given);
}

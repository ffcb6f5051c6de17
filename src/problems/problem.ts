import { caseKinds } from "./case.js";
import { collarKinds } from "./collar.js";
import { commandKinds } from "./command.js";
import { composeKinds } from "./compose.js";
import { costKinds } from "./costs.js";
import { doseKinds } from "./doses.js";
import { fileKinds } from "./files.js";
import type { Kind, Severity } from "./kind.js";
import { lookKinds } from "./look.js";
import { newKinds } from "./new.js";
import type { Place } from "./place.js";
import { planKinds } from "./plan.js";
import { readingKinds } from "./reading.js";
import { renderKinds } from "./render.js";
import { reviseKinds } from "./revise.js";
import { sendKinds } from "./send.js";
import { signKinds } from "./signs.js";
import { tableKinds } from "./tables.js";
import { translationKinds } from "./translation.js";
import { visitKinds } from "./visits.js";

/** Every problem the tool can tell, by code. Its sentence and hint are in locales/<tag>/problems/. */
const kinds = {
  ...fileKinds,
  ...planKinds,
  ...tableKinds,
  ...visitKinds,
  ...doseKinds,
  ...costKinds,
  ...collarKinds,
  ...signKinds,
  ...composeKinds,
  ...renderKinds,
  ...lookKinds,
  ...readingKinds,
  ...commandKinds,
  ...translationKinds,
  ...sendKinds,
  ...reviseKinds,
  ...newKinds,
  ...caseKinds,
};

type Kinds = typeof kinds;
export type Code = keyof Kinds;
type ValuesOf<C extends Code> = Kinds[C] extends Kind<infer V> ? V : never;

/** One thing the clinician is told: what, how grave, where, and the values its sentence needs. */
export type Problem = {
  [C in Code]: { code: C; severity: Severity; at: Place; values: ValuesOf<C> };
}[Code];

/** What a stage hands on: its result, unless something stopped it, and all it has to say. */
export type Outcome<T> = { value: T | null; problems: Problem[] };

export const problem = <C extends Code>(code: C, at: Place, values: ValuesOf<C>): Problem =>
  ({ code, severity: kinds[code].severity, at, values }) as unknown as Problem;

/** The values that a reason for going on must name, in order; none where the code alone will do. */
export const namesOf = (code: Code): readonly string[] => kinds[code].names;

export const codes = Object.keys(kinds) as Code[];
export const isCode = (text: string): text is Code => Object.hasOwn(kinds, text);
export const stops = (problems: readonly Problem[]): boolean => problems.some(({ severity }) => severity === "stop");

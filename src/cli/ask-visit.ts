import type { Readable, Writable } from "node:stream";
import { isCancel, multiselect, select, text } from "@clack/prompts";
import { explain, type Problem } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Reason } from "#problems/settle.js";
import type { Desk } from "./desk.js";
import { listed } from "./entry/said-fields.js";
import { printable } from "./printable.js";
import { deskLanguage } from "./say.js";
import { leftOf, medicineOf } from "./visit-flags.js";

/** What was entered so far, as the fields of a visit's file. */
export type Entered = Record<string, unknown>;
/** What an answer is held against. medicines: those of the plan; collar: whether it has one; tryOut: all that entering this would bring to light. */
export type Known = { medicines: readonly string[]; collar: boolean; tryOut: (entered: Entered) => Problem[] };
/** Where questions are asked and answered. */
export type Screen = { input: Readable; output: Writable };

/**
 * One question. Typed unless it has options; read: what was typed, as its field has it; several: more than one option may be
 * chosen; when: whether it is asked at all.
 */
type Question = {
  field: string;
  seen?: true;
  options?: readonly string[];
  several?: true;
  read?: (typed: string) => unknown;
  when?: (entered: Entered) => boolean;
};

const commas = (typed: string): string[] =>
  typed
    .split(",")
    .map((word) => word.trim())
    .filter(Boolean);

/** A closed wound is told of otherwise, and other visits follow. */
const isClosed = ({ decided }: Entered) => decided === "close";

const questionsOf = ({ medicines, collar }: Known): Question[] => [
  { field: "at" },
  { field: "visit", read: commas },
  { field: "discharge", seen: true, options: ["none", "little", "moderate", "much"] },
  { field: "tissue", seen: true, options: ["pink", "red", "pale", "yellow", "grey", "black"], several: true },
  { field: "smell", seen: true, options: ["none", "slight", "bad"] },
  { field: "bandage", seen: true, options: ["dry", "damp", "soaked", "slipped", "chewed", "off"] },
  { field: "pain", seen: true, options: ["none", "mild", "moderate", "severe"] },
  { field: "did", read: commas },
  { field: "decided", options: ["continue", "stretch", "close", "drain out", "stop"] },
  { field: "reason", when: isClosed },
  { field: "course", read: listed, when: isClosed },
  { field: "collar until", when: (entered) => collar && isClosed(entered) },
  { field: "every", when: ({ decided }) => decided === "stretch" },
  { field: "weight" },
  { field: "left", read: (typed) => leftOf(commas(typed)), when: () => medicines.length > 0 },
  { field: "stop", options: medicines, several: true, when: () => medicines.length > 0 },
  { field: "medicines", read: (typed) => listed(typed).map(medicineOf) },
  { field: "charged" },
  { field: "paid" },
];

const at = { file: "", line: 1, column: 1, length: 1 };
/** What stands for an answer that is still to come while an earlier one is tried. */
const standIns: Entered = { visit: ["recheck"], decided: "continue" };

/** Asks what was seen, done and decided, and lets no answer pass that would stop the plan; null where it is broken off. */
export async function askVisit(desk: Desk, known: Known, screen: Screen): Promise<Entered | null> {
  let entered: Entered = {};
  for (const question of questionsOf(known)) {
    if (question.when?.(entered) === false) continue;
    const withAnswer = (answer: string | string[]): Entered => {
      const value = typeof answer === "string" && question.read ? question.read(answer) : answer;
      if (value === "" || (Array.isArray(value) && value.length === 0)) return entered;
      const { field, seen } = question;
      return seen
        ? { ...entered, seen: { ...(entered["seen"] as Entered), [field]: value } }
        : { ...entered, [field]: value };
    };
    const answer = await askOne(desk, question, screen, (typed) => {
      // Whether the visit has a price is asked for last.
      const early = (found: Problem) => found.code === "revise-charge-unknown" && question.field !== "charged";
      const found = known.tryOut({ ...standIns, ...withAnswer(typed) }).filter((one) => !early(one));
      const stop = found.find(({ severity }) => severity === "stop");
      return stop && say(desk, stop);
    });
    if (answer === null) return null;
    entered = withAnswer(answer);
  }
  return entered;
}

/** Asks why the clinician goes on with each problem that needs a reason; null where none is given for one of them. */
export async function askReasons(
  desk: Desk,
  asks: readonly { found: Problem; for: string | null }[],
  screen: Screen,
): Promise<Reason[] | null> {
  const reasons: Reason[] = [];
  for (const { found, for: subject } of asks) {
    const message = `${say(desk, found)}\n${say(desk, problem("revise-ask", at, { context: "why" }))}`;
    const reason = await text({ message, ...screen });
    if (isCancel(reason) || !reason?.trim()) return null;
    reasons.push({ problem: found.code, ...(subject === null ? {} : { for: subject }), reason: reason.trim() });
  }
  return reasons;
}

function say({ house }: Desk, found: Problem): string {
  const { what, hint } = explain(found, house, deskLanguage());
  return printable(hint ? `${what} ${hint}` : what);
}

async function askOne(
  desk: Desk,
  { field, options: words, several }: Question,
  screen: Screen,
  fault: (typed: string) => string | undefined,
): Promise<string | string[] | null> {
  const message = say(desk, problem("revise-ask", at, { context: field }));
  const options = (words ?? []).map((value) => ({ value }));
  const answer = !words
    ? await text({ message, validate: (typed) => fault(typed ?? ""), ...screen })
    : several
      ? await multiselect({ message, options, required: false, ...screen })
      : await select({ message, options, ...screen });
  return isCancel(answer) ? null : (answer ?? "");
}

import { dirname, join, relative, resolve } from "node:path";
import { compose, explain, type Problem, planJsonSchema } from "#index.js";
import { keep } from "#io/state.js";
import { problem, stops } from "#problems/problem.js";
import { type Reason, settle } from "#problems/settle.js";
import { called } from "./called.js";
import type { Case } from "./case.js";
import { noReviews } from "./clinic-reviews.js";
import type { Desk } from "./desk.js";
import type { Answers } from "./entry/answers.js";
import { habitsWith } from "./entry/habits.js";
import { back } from "./entry/interview.js";
import { type Asked, planDraft, type Remark } from "./entry/plan-draft.js";
import type { PlanRoom } from "./entry/plan-room.js";
import { askReasons, asksOf } from "./entry/reasons.js";
import { remarks } from "./entry/remarks.js";
import { tryPlan } from "./entry/trial.js";
import { writeFresh } from "./entry/write-fresh.js";
import type { ExitCode } from "./exit-code.js";
import { printable } from "./printable.js";
import { quoted } from "./quoted.js";
import { report } from "./report.js";
import { sayer } from "./say.js";
import { verdictLine, verdictOn } from "./verdict.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const schemaName = "plan.schema.json";
const noRemark: Remark = () => "";

/** allow: reasons given by flags; asking: whether somebody is there to give those that are missing. */
export type Given = { answers: Answers; allow: readonly Reason[]; asking: boolean };

/** Writes the plan of the answers, with its schema beside the clinic's profile; not what something stops. back: nothing yet. */
export async function writePlan(
  desk: Desk,
  room: PlanRoom,
  path: string,
  given: Given,
): Promise<ExitCode | typeof back> {
  const say = sayer(desk);
  const asks = await reasonsFor(room, path, given);
  if (asks === back) return back;
  if (asks === null) {
    say(problem("new-cancelled", at, {}));
    return 2;
  }
  const text = draftOf(room, path, given.answers, asks, remarks(room.ground.house, room.language));
  const made = tried(room, path, text);
  const settled = settle(made.problems, made.case.plan.value?.allow ?? []);
  report(desk, made.case, settled);
  if (stops(settled.open)) {
    say(problem("new-not-written", at, {}));
    return 1;
  }

  const unwritten = await writeFresh(path, text);
  if (unwritten) {
    say(unwritten);
    return 2;
  }
  await writeFresh(schemaBeside(room), `${JSON.stringify(planJsonSchema(), null, 2)}\n`);
  await keep("choices.json", JSON.stringify(habitsWith(room.known.habits, given.answers)));
  const verdict = verdictOn(settled);
  if (!desk.json) {
    desk.terminal.err(verdictLine(desk, made.case, verdict));
    say(problem("new-next", at, { command: `${called()} build ${word(path)} --out out` }));
  }
  desk.terminal.out(desk.json ? JSON.stringify({ plan: path, ...verdict }) : path);
  return 0;
}

/** What asks for a reason, with those that were given. back: to the question before; null: they have had enough of being asked. */
async function reasonsFor(room: PlanRoom, path: string, { answers, allow, asking }: Given) {
  const problemsWith = (asks: readonly Asked[]) =>
    tried(room, path, draftOf(room, path, answers, asks, noRemark)).problems;
  const problems = problemsWith([]);
  const asks = asksOf(problems, allow);
  if (!asking || stops(problems)) return asks;
  const say = (found: Problem) => printable(explain(found, room.ground.house, room.language).what);
  const faultOf = (told: readonly Asked[]) => problemsWith(told).find(({ severity }) => severity === "stop");
  return askReasons(asks, faultOf, say);
}

const schemaBeside = ({ clinicPath }: PlanRoom) => join(dirname(clinicPath), schemaName);

function draftOf(room: PlanRoom, path: string, answers: Answers, asks: readonly Asked[], remark: Remark): string {
  const from = (target: string) =>
    relative(resolve(dirname(path)), resolve(target))
      .split("\\")
      .join("/");
  const draft = { clinic: from(room.clinicPath), schema: from(schemaBeside(room)), collars: room.collars, asks };
  return planDraft(answers, draft, remark);
}

/** A path as one word of a command. */
const word = (path: string) => (/^[\w./-]+$/.test(path) ? path : quoted(path));

/** The plan as check would see it, as far as its words. */
function tried(room: PlanRoom, path: string, text: string): { case: Case; problems: Problem[] } {
  const { house } = room.ground;
  const { value, problems } = tryPlan(text, path, room.ground);
  const worded = value?.facts ? compose(value.facts, house, { language: value.facts.owner.languages }).problems : [];
  return {
    case: {
      name: path,
      plan: { value: value?.plan ?? null, problems },
      earlier: [],
      past: [],
      texts: [{ file: path, bytes: new TextEncoder().encode(text), is: "plan", firstLine: 1 }, ...room.texts],
      house,
      language: room.language,
      reviews: noReviews,
    },
    problems: [...problems, ...worded],
  };
}

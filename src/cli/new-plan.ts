import { dirname, join, relative, resolve } from "node:path";
import { compose, type Problem, planJsonSchema } from "#index.js";
import { isThere } from "#io/find-above.js";
import { keep } from "#io/state.js";
import { problem, stops } from "#problems/problem.js";
import { settle, subjectOf } from "#problems/settle.js";
import type { Case } from "./case.js";
import { noReviews } from "./clinic-reviews.js";
import { type Desk, openDesk } from "./desk.js";
import type { Answers } from "./entry/answers.js";
import { asker, canAsk, teller } from "./entry/ask.js";
import { habitsWith } from "./entry/habits.js";
import { hold } from "./entry/interview.js";
import { type OpenAsk, planDraft, type Remark } from "./entry/plan-draft.js";
import { planQuestions } from "./entry/plan-questions.js";
import { openPlanRoom, type PlanRoom } from "./entry/plan-room.js";
import { remarks } from "./entry/remarks.js";
import { tryPlan } from "./entry/trial.js";
import { writeFresh } from "./entry/write-fresh.js";
import type { ExitCode } from "./exit-code.js";
import type { NewOptions } from "./options.js";
import { quoted } from "./quoted.js";
import { report } from "./report.js";
import { sayer } from "./say.js";
import { verdictLine, verdictOn } from "./verdict.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const schemaName = "plan.schema.json";

/** Asks for a plan, or takes it from flags, and writes it. Nothing is written over, and nothing that something stops. */
export async function newPlan(file: string | undefined, { json, ...options }: NewOptions): Promise<ExitCode> {
  const desk = await openDesk(json ? { json } : {});
  const say = sayer(desk);
  if (file !== undefined && (await isThere(file))) {
    say(problem("new-exists", at, { path: file }));
    return 2;
  }
  const { room, refusal } = await openPlanRoom(desk, file === undefined ? "." : dirname(file), options);
  if (!room) {
    for (const one of refusal.problems) say(one);
    if (refusal.broken) report(desk, refusal.broken, settle(refusal.broken.plan.problems, []));
    return refusal.broken ? 1 : 2;
  }

  const given = answersOf(options);
  const asking = canAsk() ? asker(desk, room.language, room.tryOut) : null;
  const questions = planQuestions(room.known);
  const held = await hold(
    { questions, tryOut: room.tryOut },
    { ...room.usual, ...given },
    asking,
    teller(desk, room.language),
  );
  if (!held || held.missing.length > 0 || held.faults.length > 0) {
    for (const one of held?.faults ?? []) say(one);
    if (!held) say(problem("new-cancelled", at, {}));
    else if (held.missing.length > 0) say(problem("new-missing", at, { flags: held.missing }));
    return 2;
  }
  const path = file ?? (await freeName(held.answers.name ?? "plan"));
  return write(desk, room, path, held.answers);
}

/** What the flags say; a flag that may be repeated is called after one of what it gives. */
function answersOf({ clinic, today, medicine, item, ...rest }: NewOptions): Answers {
  return { ...rest, ...(medicine ? { medicines: medicine } : {}), ...(item ? { items: item } : {}) };
}

/** "bramble.yaml", or "bramble-2.yaml" where that is taken. */
async function freeName(name: string): Promise<string> {
  const slug = name
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40);
  for (let number = 1; ; number++) {
    const path = `${slug || "plan"}${number === 1 ? "" : `-${number}`}.yaml`;
    if (!(await isThere(path))) return path;
  }
}

async function write(desk: Desk, room: PlanRoom, path: string, answers: Answers): Promise<ExitCode> {
  const say = sayer(desk);
  const schemaPath = join(dirname(room.clinicPath), schemaName);
  const toPath = (target: string) =>
    relative(resolve(dirname(path)), resolve(target))
      .split("\\")
      .join("/");
  const textWith = (open: readonly OpenAsk[], remark: Remark) =>
    planDraft(
      answers,
      { clinic: toPath(room.clinicPath), schema: toPath(schemaPath), collars: room.collars, open },
      remark,
    );

  const { problems } = settledCase(
    room,
    path,
    textWith([], () => ""),
  );
  const asks = settle(problems, []).open.filter(({ severity }) => severity === "ask");
  const text = textWith(
    asks.map((one) => ({ problem: one.code, for: subjectOf(one, asks) })),
    remarks(room.ground.house, room.language),
  );
  const made = settledCase(room, path, text);
  const settled = settle(made.problems, []);
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
  await writeFresh(schemaPath, `${JSON.stringify(planJsonSchema(), null, 2)}\n`);
  await keep("choices.json", JSON.stringify(habitsWith(room.known.habits, answers)));
  const verdict = verdictOn(settled);
  if (!desk.json) {
    desk.terminal.err(verdictLine(desk, made.case, verdict));
    say(problem("new-next", at, { command: `hearthsheet build ${word(path)} --out out` }));
  }
  desk.terminal.out(desk.json ? JSON.stringify({ plan: path, ...verdict }) : path);
  return 0;
}

/** A path as one word of a command. */
const word = (path: string) => (/^[\w./-]+$/.test(path) ? path : quoted(path));

/** The plan as check would see it, as far as its words. */
function settledCase(room: PlanRoom, path: string, text: string): { case: Case; problems: Problem[] } {
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

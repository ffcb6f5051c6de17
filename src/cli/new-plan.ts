import { dirname } from "node:path";
import { isThere } from "#io/find-above.js";
import { problem } from "#problems/problem.js";
import { settle } from "#problems/settle.js";
import { openDesk } from "./desk.js";
import type { Answers } from "./entry/answers.js";
import { asker, canAsk, teller } from "./entry/ask.js";
import { back, hold } from "./entry/interview.js";
import { planQuestions } from "./entry/plan-questions.js";
import { openPlanRoom } from "./entry/plan-room.js";
import type { ExitCode } from "./exit-code.js";
import type { NewOptions } from "./options.js";
import { report } from "./report.js";
import { sayer } from "./say.js";
import { writePlan } from "./write-plan.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Asks for a plan, or takes it from flags, and writes it. Nothing is written over, and nothing that something stops. */
export async function newPlan(file: string | undefined, { json, allow, ...options }: NewOptions): Promise<ExitCode> {
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
  if (asking) say(problem("new-keys", at, {}));
  const questions = planQuestions(room.known);
  let held = await hold(
    { questions, tryOut: room.tryOut },
    { ...room.usual, ...given },
    asking,
    teller(desk, room.language),
  );
  while (held && held.missing.length === 0 && held.faults.length === 0) {
    const path = file ?? (await freeName(held.answers.name ?? "plan"));
    const code = await writePlan(desk, room, path, { answers: held.answers, allow, asking: asking !== null });
    if (code !== back) return code;
    held = await held.back();
  }
  for (const one of held?.faults ?? []) say(one);
  if (!held) say(problem("new-cancelled", at, {}));
  else if (held.missing.length > 0) say(problem("new-missing", at, { flags: held.missing }));
  return 2;
}

/** What the flags say; a flag that may be repeated is called after one of what it gives. */
function answersOf({ clinic, today, medicine, item, ...rest }: Omit<NewOptions, "allow">): Answers {
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

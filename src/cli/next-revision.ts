import { basename, dirname, join } from "node:path";
import {
  compute,
  editPlan,
  type Facts,
  type House,
  mergeVisit,
  type Outcome,
  type Plan,
  type Problem,
  readPlan,
  revise,
  type Source,
} from "#index.js";
import { sha256 } from "#io/sha256.js";
import { type Reason, settle, subjectOf } from "#problems/settle.js";
import type { Case } from "./case.js";

/** A plan in force, what follows from it, and the texts it was read from. */
export type InForce = { one: Case; path: string; plan: Plan; facts: Facts; today: string };
/** on: the day of the visit. toChoose: what the build of it will stop at, until somebody has changed it by hand. */
export type Next = Source & { on: string; toChoose: Problem[] };
/** What was entered: a file, fields that go before the file's own, and the reasons given for what does not fit. */
export type Entry = { source: Source | null; fields: Record<string, unknown>; reasons: readonly Reason[] };

/**
 * The next revision of a plan, from what was entered after a visit: its file's name beside the old one, and its text, which is
 * read as any plan is. The reasons stay in it. Problems: those of what was entered, then those for which it cannot be read.
 */
export function nextRevision(house: House, { path, ...inForce }: InForce, entry: Entry): Outcome<Next> {
  const { one, plan, facts } = inForce;
  const read = mergeVisit(entry.source, entry.fields);
  if (!read.value) return { value: null, problems: read.problems };
  const { value: edits, problems } = revise(plan, facts, read.value, house);
  const [old] = one.texts;
  if (!edits || !old) return { value: null, problems };
  const reasons = settle(problems, entry.reasons).allowed.map(({ problem, reason }, i) => {
    const subject = subjectOf(problem, problems);
    const value = { problem: problem.code, ...(subject === null ? {} : { for: subject }), reason };
    return { path: ["allow", plan.allow.length + i], value };
  });
  const revises = { plan: basename(path), sha256: sha256(old.bytes) };
  const text = editPlan(new TextDecoder().decode(old.bytes), [
    ...edits,
    ...reasons,
    { path: ["revises"], value: revises },
  ]);
  const file = join(dirname(path), nameOf(basename(path), facts.revision + 1));
  const made = { file, bytes: new TextEncoder().encode(text) };
  const { on, unread, toChoose } = faultsOf(house, inForce, made);
  return { value: { ...made, on, toChoose }, problems: [...problems, ...unread] };
}

/** What is wrong with the new plan: where its course and its bookings part ways, say, somebody has to choose. */
function faultsOf(house: House, { one, plan, today }: Omit<InForce, "path">, made: Source) {
  const text = (is: "clinic" | "prices") => one.texts.find((each) => each.is === is);
  const read = readPlan({ plan: made, clinic: text("clinic"), prices: text("prices") }, { today });
  const stops = ({ problems }: Outcome<unknown>) => problems.filter(({ severity }) => severity === "stop");
  const on = read.value?.discharged.slice(0, 10) ?? "";
  return {
    on,
    unread: stops(read),
    toChoose: read.value ? stops(compute(read.value, house, [...one.earlier, plan])) : [],
  };
}

/** "plan.yaml" -> "plan.r1.yaml" -> "plan.r2.yaml" */
const nameOf = (name: string, revision: number): string =>
  name.replace(/(?:\.r\d+)?(\.[^.]+)?$/, (_, ending: string | undefined) => `.r${revision}${ending ?? ""}`);

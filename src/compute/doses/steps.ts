import { type Outcome, type Problem, problem } from "#problems/problem.js";
import type { Asked } from "./asked.js";
import { type Every, readEvery } from "./every.js";
import { type Giving, giving, type Order } from "./give.js";
import type { Form } from "./made-up.js";

/** One stretch of a course with the same dose. count: how many times it is given; path: where it was written. */
export type Step = {
  order: Order;
  giving: Giving;
  every: Every;
  days: number;
  count: number;
  path: (string | number)[];
};

/** "2 weeks" as 14, also where that is no whole number. */
export const inDays = ({ value, unit }: { value: string; unit: "day" | "week" }): number =>
  Number(value) * (unit === "week" ? 7 : 1);

/** How many days the steps last together. */
export const daysOf = (steps: readonly Pick<Step, "days">[]): number => steps.reduce((sum, { days }) => sum + days, 0);

/** The steps of a course: the medicine's own, then those of a taper. */
export function stepsOf(asked: Asked, form: Form): Outcome<Step[]> {
  const { planned } = asked;
  const read = [{ ...planned, path: [] }, ...planned.next.map((step, i) => ({ ...step, path: ["next", i] }))].map(
    (order) => stepOf(asked, order, form),
  );
  const steps = read.flatMap(({ value }) => value ?? []);
  return { value: steps.length === read.length ? steps : null, problems: read.flatMap(({ problems }) => problems) };
}

type Ordered = Order & Pick<Asked["planned"], "every" | "for"> & { path: (string | number)[] };

function stepOf(asked: Asked, order: Ordered, form: Form): Outcome<Step> {
  const { path } = order;
  const medicine = asked.planned.name;
  const at = (field: string) => asked.at(...path, field);
  const where = { medicine, at: asked.at(...path), dose: at("dose"), give: at("give") };
  const { value, problems } = giving(order, form, asked, where);
  const every = readEvery(order.every);
  const days = order.for && inDays(order.for);
  const unread: Problem[] = [];
  if (!every) unread.push(problem("every-unreadable", at("every"), { given: order.every }));
  if (!days) unread.push(problem("days-missing", where.at, { medicine }));
  else if (!Number.isInteger(days)) unread.push(problem("days-not-whole", at("for"), { medicine, days: String(days) }));
  const whole = value && every && days && unread.length === 0;
  return {
    value: whole ? { order, giving: value, every, days, count: Math.ceil((days * 24) / every.hours), path } : null,
    problems: [...problems, ...unread],
  };
}

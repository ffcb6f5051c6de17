import { type Problem, problem } from "#problems/problem.js";
import type { Asked } from "./asked.js";
import { Exact, plain, shown, told } from "./exact.js";
import type { Form } from "./made-up.js";
import { inDays } from "./steps.js";

/** What a standard dropper makes of a millilitre of water, within 5 %: European Pharmacopoeia, 2.1.1 (from memory). */
const usualDrops = 20;
/** Droppers of medicines lie between; outside is more likely a slip of the pen. From memory. */
const drops = { least: 10, most: 60 };
/** More bottles than this for one course are asked about; common practice, no source. */
const mostContainers = 3;
/** Longer than this once opened is more likely a slip of the pen: four weeks is usual for drops and insulin. From memory. */
const mostDaysOpen = 60;

type Range = { least: number; most: number };

/** What one usually holds, in mL or g, never ten times apart so that a slip of the point is seen; common practice, no source. */
function usuallyHeld(kind: Form["kind"], route: string): Range | null {
  if (kind === "drops" || kind === "insulin") return { least: 2.5, most: 20 };
  if (kind === "spray") return { least: 30, most: 250 };
  if (kind === "ointment") return route.includes("eye") ? { least: 1.5, most: 10 } : { least: 7, most: 60 };
  return null;
}

/** Bottles, tubes or vials for the whole course: by what goes into them, and by how long an opened one keeps. */
export function containersNeeded(asked: Asked, form: Form, given: Exact, days: number): Exact {
  const held = asked.planned.container?.value;
  const needed = millilitres(asked, form, given);
  const byAmount = held && needed ? needed.div(held).ceil() : new Exact(1);
  const open = daysOpen(asked);
  return Exact.max(1, byAmount, open ? new Exact(days).div(open).ceil() : 1);
}

/** What is given of drops and of insulin in millilitres; of both eyes or ears, for both. Null of what nobody can reckon. */
export function millilitres({ planned }: Asked, form: Form, given: Exact): Exact | null {
  if (form.kind === "insulin" && form.strength) return given.div(form.strength.value);
  if (form.kind !== "drops") return null;
  const sides = planned.route.startsWith("both ") ? 2 : 1;
  return given.times(sides).div(planned["drops per mL"] ?? usualDrops);
}

/** How many days it may be used once it is opened, where the plan says it. */
export const daysOpen = ({ planned }: Asked): number | null => {
  const open = planned["once opened"];
  return open ? inDays(open) : null;
};

/** What is said of bottles, tubes and vials, and of how long an opened one keeps. */
export function containerProblems(asked: Asked, form: Form, given: Exact, days: number): Problem[] {
  const { planned, at } = asked;
  const medicine = planned.name;
  const open = daysOpen(asked);
  const problems: Problem[] = [];
  if (open !== null && !Number.isInteger(open))
    return [problem("days-not-whole", at("once opened"), { medicine, days: String(open) })];
  if (open !== null && open > mostDaysOpen)
    problems.push(problem("opened-very-long", at("once opened"), { medicine, days: open, most: mostDaysOpen }));
  const perMl = planned["drops per mL"];
  if (perMl !== undefined && (form.kind !== "drops" || perMl < drops.least || perMl > drops.most))
    problems.push(problem("drops-unlikely", at("drops per mL"), { medicine, drops: perMl, ...drops }));
  if (!form.container) return [...problems, ...uncontained(asked, days, open)];
  return [...problems, ...sizeProblems(asked, form, given), ...many(asked, form, given, days)];
}

/** What is counted out has no bottle to be told the size of, and a bottle that is mixed keeps no longer than it keeps. */
function uncontained({ planned, at }: Asked, days: number, open: number | null): Problem[] {
  const medicine = planned.name;
  const { container } = planned;
  if (container) return [problem("container-in-other-unit", at("container"), { medicine, given: told(container) })];
  return open !== null && open < days ? [problem("opened-too-short", at("once opened"), { medicine, open, days })] : [];
}

function sizeProblems(asked: Asked, form: Form, given: Exact): Problem[] {
  const { planned, at } = asked;
  const { container } = planned;
  const medicine = planned.name;
  const needed = millilitres(asked, form, given);
  if (!container) {
    const values = { medicine, needed: needed ? `${shown(needed)} mL` : "", context: needed ? "needed" : "" };
    return [problem("container-not-said", at(), values)];
  }
  const held = told(container);
  if (needed && container.unit !== "mL")
    return [problem("container-in-other-unit", at("container"), { medicine, given: held })];
  const usual = usuallyHeld(form.kind, planned.route);
  if (!usual || (usual.least <= Number(container.value) && Number(container.value) <= usual.most)) return [];
  return [problem("container-unlikely", at("container"), { medicine, given: held, ...usual })];
}

function many(asked: Asked, form: Form, given: Exact, days: number): Problem[] {
  const containers = containersNeeded(asked, form, given, days);
  if (containers.lte(mostContainers)) return [];
  const values = {
    medicine: asked.planned.name,
    needed: `${plain(containers)} ${form.container}`,
    most: mostContainers,
  };
  return [problem("containers-many", asked.at(asked.planned.container ? "container" : "once opened"), values)];
}

import type { DayPart, Dose, Facts, Medicine, Sign, Statement, Step, Stretch } from "#compute/facts.js";
import type { Place } from "#problems/place.js";

/** One medicine with its one dose, or the steps of it that changes, and what is to be known of it and not of the others. */
export type Remedy = {
  medicine: Medicine;
  only: Stretch | null;
  steps: Stretch[];
  statements: Statement[];
  from: Place;
};

/** What is done at the same times of the day. */
export type TimesOfDay = { times: DayPart[]; steps: Step[] };

/** A dose that is due, beside the medicine it is of. */
export type Due = { dose: Dose; medicine: Medicine; from: Place };

/** The facts as a template sees them: also sorted the way the page shows them, so that a template only loops and chooses. */
export type View = Facts & {
  /** Signs to go at once for: the first few, and those that follow. */
  goNow: { first: Sign[]; rest: Sign[] };
  ringToday: Sign[];
  tellAtVisit: Sign[];
  timesOfDay: TimesOfDay[];
  remedies: Remedy[];
  /** What is to be known of every medicine, told once where there are several. */
  ofEveryMedicine: Statement[];
  due: Due[];
  /** What visits are for, in the order the course comes to them. */
  visitKinds: { kind: string }[];
  /** Sections that are there for more than one reason. */
  has: { next: boolean; home: boolean; visits: boolean };
};

/** A tired reader keeps about seven things apart (Miller 1956); the list goes on under its own heading. */
const firstSigns = 7;
const partOrder: DayPart[] = ["morning", "midday", "evening", "bedtime", "any"];

export function viewOf(facts: Facts): View {
  const signs = (urgency: Sign["urgency"]) => facts.signs.filter((sign) => sign.urgency === urgency);
  const now = signs("now");
  const ofEveryMedicine = sharedByAll(facts.medicines);
  return {
    ...facts,
    goNow: { first: now.slice(0, firstSigns), rest: now.slice(firstSigns) },
    ringToday: signs("today"),
    tellAtVisit: signs("visit"),
    timesOfDay: timesOfDay(facts.steps),
    remedies: facts.medicines.map((medicine) => remedy(medicine, ofEveryMedicine)),
    ofEveryMedicine,
    due: dueNext(facts),
    visitKinds: [...new Set(facts.course.visits.flatMap(({ purposes }) => purposes.map(({ kind }) => kind)))].map(
      (kind) => ({ kind }),
    ),
    has: {
      next: facts.next.dose !== null || facts.next.visit !== null || facts.next.trip !== null,
      home: [facts.steps, facts.supplies, facts.ends].some(({ length }) => length > 0),
      visits: facts.course.visits.length > 0,
    },
  };
}

/** Steps under all the times of day they are done at: earliest first, and what is done most often before the rest. */
function timesOfDay(steps: Step[]): TimesOfDay[] {
  const groups = new Map<string, TimesOfDay>();
  for (const step of steps) {
    const times = partOrder.filter((part) => step.times.includes(part));
    const key = times.join(" ");
    const group = groups.get(key) ?? { times, steps: [] };
    group.steps.push(step);
    groups.set(key, group);
  }
  const first = ({ times: [time] }: TimesOfDay) => partOrder.indexOf(time ?? "any");
  return [...groups.values()].sort((one, other) => first(one) - first(other) || other.times.length - one.times.length);
}

/** The statements that stand under each of several medicines; none where there is only one. */
function sharedByAll([first, ...others]: Medicine[]): Statement[] {
  if (!first || others.length === 0) return [];
  return first.statements.filter(({ id }) =>
    others.every(({ statements }) => statements.some((other) => other.id === id)),
  );
}

function remedy(medicine: Medicine, shared: Statement[]): Remedy {
  const [only = null, ...later] = medicine.steps;
  const steps = later.length > 0 ? medicine.steps : [];
  const statements = medicine.statements.filter(({ id }) => !shared.some((other) => other.id === id));
  return { medicine, only: later.length > 0 ? null : only, steps, statements, from: medicine.from };
}

function dueNext({ next, medicines }: Facts): Due[] {
  const doses = next.dose ? [next.dose, ...next.alsoDue] : [];
  return doses.flatMap((dose) => {
    const medicine = medicines.find(({ id }) => id === dose.medicine);
    return medicine ? [{ dose, medicine, from: dose.from }] : [];
  });
}

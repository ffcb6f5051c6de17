import { isDeepStrictEqual } from "node:util";
import type { DayPart, Dose, Facts, Medicine, Sign, Statement, Step, Stretch, Told } from "#compute/facts.js";
import type { Place } from "#problems/place.js";
import { inParts, mostTogether, type Part } from "./parts.js";

/** One medicine with its one dose, or the steps of it that changes, and what is to be known of it and not of the others. */
export type Remedy = {
  medicine: Medicine;
  only: Stretch | null;
  steps: Stretch[];
  statements: Part<Statement>[];
  missed: Told | null;
  from: Place;
};

/** What is done at the same times of the day. */
export type TimesOfDay = { times: DayPart[]; parts: Part<Step>[] };

/** A dose that is due, beside the medicine it is of. */
export type Due = { dose: Dose; medicine: Medicine; from: Place };

/** The facts as a template sees them: also sorted the way the page shows them, so that a template only loops and chooses. */
export type View = Facts & {
  /** Signs to go at once for: the first few, and those that follow. */
  goNow: { first: Sign[]; rest: Sign[] };
  /** Long lists, in parts that a tired reader can hold. */
  parts: {
    ringToday: Part<Sign>[];
    tellAtVisit: Part<Sign>[];
    normal: Part<Statement>[];
    avoid: Part<Statement>[];
    collar: Part<Statement>[];
    ends: Part<Statement>[];
  };
  timesOfDay: TimesOfDay[];
  remedies: Remedy[];
  /** What is to be known of every medicine, told once where there are several. */
  ofEveryMedicine: Part<Statement>[];
  /** The clinician's own words on a missed dose, where they are the same for several medicines and there are no others. */
  missedOfEvery: Told | null;
  due: Due[];
  /** What visits are for, in the order the course comes to them. */
  visitKinds: { kind: string }[];
  /** Sections that are there for more than one reason. */
  has: { next: boolean; home: boolean; visits: boolean; furtherVisits: boolean; cancelled: boolean };
};

const partOrder: DayPart[] = ["morning", "midday", "evening", "bedtime", "any"];

export function viewOf(facts: Facts): View {
  const signs = (urgency: Sign["urgency"]) => facts.signs.filter((sign) => sign.urgency === urgency);
  const now = signs("now");
  const ofEveryMedicine = sharedByAll(facts.medicines);
  const missedOfEvery = missedAlike(facts.medicines);
  return {
    ...facts,
    goNow: { first: now.slice(0, mostTogether), rest: now.slice(mostTogether) },
    parts: {
      ringToday: inParts(signs("today")),
      tellAtVisit: inParts(signs("visit")),
      normal: inParts(facts.normal),
      avoid: inParts(facts.avoid),
      collar: inParts(facts.collar?.statements ?? []),
      ends: inParts(facts.ends),
    },
    timesOfDay: timesOfDay(facts.steps),
    remedies: facts.medicines.map((medicine) => remedy(medicine, ofEveryMedicine, missedOfEvery)),
    ofEveryMedicine: inParts(ofEveryMedicine),
    missedOfEvery,
    due: dueNext(facts),
    visitKinds: [...new Set(facts.course.visits.flatMap(({ purposes }) => purposes.map(({ kind }) => kind)))].map(
      (kind) => ({ kind }),
    ),
    has: {
      next: facts.next.dose !== null || facts.next.visit !== null || facts.next.trip !== null,
      home: [facts.steps, facts.supplies, facts.ends].some(({ length }) => length > 0),
      visits: facts.course.visits.length > 0,
      furtherVisits: facts.course.trips.most > 1,
      cancelled: facts.changes !== null && facts.changes.gone.length > 0,
    },
  };
}

/** Steps under all the times of day they are done at: earliest first, and what is done most often before the rest. */
function timesOfDay(steps: Step[]): TimesOfDay[] {
  const groups = new Map<string, { times: DayPart[]; steps: Step[] }>();
  for (const step of steps) {
    const times = partOrder.filter((part) => step.times.includes(part));
    const key = times.join(" ");
    const group = groups.get(key) ?? { times, steps: [] };
    group.steps.push(step);
    groups.set(key, group);
  }
  const first = ({ times: [time] }: { times: DayPart[] }) => partOrder.indexOf(time ?? "any");
  return [...groups.values()]
    .sort((one, other) => first(one) - first(other) || other.times.length - one.times.length)
    .map(({ times, steps }) => ({ times, parts: inParts(steps) }));
}

/** The statements that stand under each of several medicines; none where there is only one. */
function sharedByAll([first, ...others]: Medicine[]): Statement[] {
  if (!first || others.length === 0) return [];
  return first.statements.filter(({ id }) =>
    others.every(({ statements }) => statements.some((other) => other.id === id)),
  );
}

function missedAlike([first, ...others]: Medicine[]): Told | null {
  if (!first || others.length === 0) return null;
  return others.every(({ missed }) => isDeepStrictEqual(missed, first.missed)) ? first.missed : null;
}

function remedy(medicine: Medicine, shared: Statement[], missedOfEvery: Told | null): Remedy {
  const [only = null, ...later] = medicine.steps;
  const steps = later.length > 0 ? medicine.steps : [];
  const statements = medicine.statements.filter(({ id }) => !shared.some((other) => other.id === id));
  const missed = missedOfEvery ? null : medicine.missed;
  return {
    medicine,
    only: later.length > 0 ? null : only,
    steps,
    statements: inParts(statements),
    missed,
    from: medicine.from,
  };
}

function dueNext({ next, medicines }: Facts): Due[] {
  const doses = next.dose ? [next.dose, ...next.alsoDue] : [];
  return doses.flatMap((dose) => {
    const medicine = medicines.find(({ id }) => id === dose.medicine);
    return medicine ? [{ dose, medicine, from: dose.from }] : [];
  });
}

import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import type { VisitKind } from "#tables/visits.js";
import type { Care, Changes, Estimate, Facts, LocalTime, Medicine, Visit } from "./facts.js";
import { doneCounts } from "./visits/done.js";

/** What this paper says otherwise than the one before it; what took place as it was told is no change. */
export function changesOf(before: Facts, now: Facts, plan: Plan, kinds: readonly VisitKind[]): Changes {
  const visits = visitChanges(before, now, plan, kinds);
  const care = now.care.filter((one) => !before.care.some((old) => isSameCare(one, old)));
  const medicines = medicineChanges(before, now);
  const collar = until(before) === until(now) || !now.collar ? null : now.collar.until;
  const cost = costChange(before.estimate, now.estimate);
  const told = [...Object.values(visits.told), ...Object.values(medicines)].some((list) => list.length > 0);
  return {
    since: before.discharged.slice(0, 10),
    visits: visits.told,
    care,
    medicines,
    collar,
    cost,
    any: told || care.length > 0 || collar !== null || cost !== null,
    gone: visits.gone,
    from: placeOf(plan.places, "revises"),
  };
}

function visitChanges(before: Facts, now: Facts, { done }: Plan, kinds: readonly VisitKind[]) {
  const counts = new Map(doneCounts(done, kinds));
  const tookPlace = ({ purposes: [first] }: Visit) =>
    first !== undefined && first.number <= (counts.get(first.kind) ?? 0);
  const later = now.course.visits;
  const missing = [...before.course.visits, ...(before.changes?.gone ?? [])].filter(
    (visit, i, all) =>
      !tookPlace(visit) && !later.some(({ id }) => id === visit.id) && all.findIndex(({ id }) => id === visit.id) === i,
  );
  const pairs = later.flatMap((visit) => {
    const old = before.course.visits.find(({ id }) => id === visit.id);
    return old && isSure(visit) && when(old) !== when(visit) ? [{ visit, before: old }] : [];
  });
  const known = (visit: Visit) => before.course.visits.some(({ id }) => id === visit.id);
  return {
    told: {
      booked: pairs.filter(isBookedWithin).map(({ visit }) => visit),
      moved: pairs.filter((pair) => !isBookedWithin(pair)),
      added: later.filter((visit) => isSure(visit) && !known(visit)),
      cancelled: missing.filter((visit) => isSure(visit) && known(visit)),
    },
    gone: missing,
  };
}

const isSameCare = (one: Care, other: Care): boolean =>
  one.topic === other.topic && one.site === other.site && one.side === other.side && one.bandage === other.bandage;

/** A visit that had only days now has a time, on one of them. */
const isBookedWithin = ({ visit: { at }, before }: { visit: Visit; before: Visit }): boolean =>
  before.at === null && at !== null && before.earliest <= at.slice(0, 10) && at.slice(0, 10) <= before.latest;

const isSure = ({ certainty }: Visit): boolean => certainty !== "possible";
const when = ({ at, earliest, latest }: Visit): string => at ?? `${earliest}/${latest}`;

function medicineChanges(before: Facts, now: Facts): Changes["medicines"] {
  const was = ({ id }: Medicine) => before.medicines.find((one) => one.id === id);
  const goesOn = ({ last, asNeededMost }: Medicine) =>
    asNeededMost !== null || (last !== null && last > now.discharged);
  return {
    started: now.medicines.filter((medicine) => !was(medicine)),
    stopped: before.medicines.filter(
      (medicine) => goesOn(medicine) && !now.medicines.some(({ id }) => id === medicine.id),
    ),
    changed: now.medicines.filter((medicine) => {
      const old = was(medicine);
      return old !== undefined && said(old, now.discharged) !== said(medicine, now.discharged);
    }),
  };
}

/** What an owner would do otherwise from now on: how much, how often, how and until when. */
function said(
  { give, strength, everyHours, asNeededMost, food, route, last, doses }: Medicine,
  from: LocalTime,
): string {
  const byTheClock = doses.filter(({ at }) => at > from).map((dose) => dose.give);
  const given = asNeededMost === null ? byTheClock : [give, everyHours, asNeededMost];
  return JSON.stringify([given, strength, food, route, last]);
}

const until = ({ collar }: Facts): string => JSON.stringify(collar?.until ?? null);

function costChange(before: Estimate | null, now: Estimate | null): Changes["cost"] {
  if (!before || !now) return null;
  const [old, next] = [before.whole, now.whole];
  return old.low === next.low && old.high === next.high ? null : { before: old, after: next };
}

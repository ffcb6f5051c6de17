import type { Course, Dose, Facts, LocalTime, Medicine } from "./facts.js";

/** The first dose to give at home, what else is due at that time, and the first visit; nothing that is only possible. */
export function nextThings(discharged: LocalTime, medicines: Medicine[], { visits, first }: Course): Facts["next"] {
  const due = medicines
    .filter(({ asNeededMost }) => asNeededMost === null)
    .flatMap(({ doses }) => doses)
    .filter(({ at }) => at >= discharged)
    .sort(byTime);
  const [dose = null, ...later] = due;
  const coming = visits.filter(({ certainty }) => certainty !== "possible");
  const visit = coming.toSorted((a, b) => (a.at ?? a.earliest).localeCompare(b.at ?? b.earliest))[0] ?? null;
  return { dose, alsoDue: later.filter(({ at }) => at === dose?.at), visit, trip: visit ? null : first };
}

const byTime = (a: Dose, b: Dose) => a.at.localeCompare(b.at) || a.medicine.localeCompare(b.medicine);

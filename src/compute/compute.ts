import { differenceInMonths, parseISO } from "date-fns";
import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import type { Outcome } from "#problems/problem.js";
import type { Tables } from "#tables/tables.js";
import { accentOf } from "./accent.js";
import { aheadOf } from "./calendar/ahead.js";
import { caseId } from "./case-id.js";
import { changesOf } from "./changes.js";
import { computeCollar } from "./collar/collar.js";
import { contactsOf } from "./contacts.js";
import { computeCosts } from "./costs/costs.js";
import { computeDoses } from "./doses/doses.js";
import type { Facts, Patient } from "./facts.js";
import { homeLog } from "./home-log.js";
import { nextThings } from "./next.js";
import { openingHours } from "./opening-hours.js";
import { overtaken } from "./overtaken.js";
import { computeCare } from "./signs/care.js";
import { sinceBefore } from "./since.js";
import { toldIn } from "./told.js";
import { computeVisits } from "./visits/visits.js";

/**
 * Everything that follows from a plan. Parts that something stops leave no facts at all: half a handout is none.
 * earlier: the facts of the revision it takes the place of.
 */
export function compute(plan: Plan, tables: Tables, earlier: Facts | null = null): Outcome<Facts> {
  const care = computeCare(plan, tables.care);
  const course = computeVisits(plan, tables.visits, tables.care.topics, care.value?.care);
  const doses = computeDoses(plan, tables.medicines);
  const collar = course.value && computeCollar(plan, course.value, tables.care);
  const costs = course.value && doses.value && computeCosts(plan, course.value, doses.value.medicines, tables.cash);
  const problems = [
    ...[care, course, doses, collar, costs].flatMap((part) => part?.problems ?? []),
    ...overtaken(plan, care.value?.care ?? [], tables),
  ];
  if (
    !care.value ||
    !course.value ||
    !doses.value ||
    !collar ||
    !costs ||
    problems.some(({ severity }) => severity === "stop")
  )
    return { value: null, problems };

  const facts: Facts = {
    caseId: caseId(plan),
    revision: plan.revision,
    zone: plan.clinic["time zone"],
    country: plan.clinic.country,
    discharged: plan.discharged,
    clinician: plan.clinician ?? null,
    patient: patientOf(plan),
    owner: ownerOf(plan.owner),
    clinic: {
      name: plan.clinic.name,
      address: plan.clinic.address,
      phone: plan.clinic.phone,
      email: plan.clinic.email ?? null,
      staffLanguage: plan.clinic.language,
      hours: openingHours(plan.clinic.hours),
      letterhead: plan.clinic.letterhead.map((line, i) => ({
        text: toldIn(line, plan.clinic.language),
        from: placeOf(plan.places, "clinic", "letterhead", i),
      })),
      signOff: plan.clinic["sign off"],
      accent: accentOf(plan.clinic.accent),
    },
    contacts: contactsOf(plan),
    reason: toldIn(plan.reason, plan.clinic.language),
    next: nextThings(plan.discharged, doses.value.medicines, course.value),
    ...(earlier ? sinceBefore(care.value, earlier, plan.discharged.slice(0, 10)) : care.value),
    medicines: doses.value.medicines,
    chart: doses.value.chart,
    feeding: (plan.feeding ?? []).map((line, i) => ({
      text: toldIn(line, plan.clinic.language),
      from: placeOf(plan.places, "feeding", i),
    })),
    course: course.value,
    collar: collar.value,
    estimate: costs.value,
    log: homeLog(
      {
        discharged: plan.discharged,
        statements: [...care.value.steps, ...care.value.normal, ...care.value.signs],
        medicines: doses.value.medicines,
        course: course.value,
        collar: collar.value,
      },
      tables.care.log,
    ),
    ahead: aheadOf(plan, course.value, doses.value.medicines),
    changes: null,
  };
  return { value: earlier ? { ...facts, changes: changesOf(earlier, facts, plan, tables.visits) } : facts, problems };
}

const ownerOf = ({ name, language, email, address }: Plan["owner"]): Facts["owner"] => ({
  name,
  languages: language,
  email: email ?? null,
  address: address ?? [],
});

function patientOf({ patient, discharged }: Plan): Patient {
  const months = patient.born === undefined ? null : differenceInMonths(parseISO(discharged), parseISO(patient.born));
  return {
    name: patient.name,
    species: patient.species,
    sex: patient.sex.endsWith("female") ? "female" : "male",
    neutered: patient.sex.includes(" "),
    breed: patient.breed ?? null,
    age: months === null ? null : { years: Math.floor(months / 12), months: months % 12 },
    weight: patient.weight,
  };
}

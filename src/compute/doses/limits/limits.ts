import { type Problem, problem } from "#problems/problem.js";
import type { MedicineRow, Regimen } from "#tables/medicines.js";
import type { Asked } from "../asked.js";
import type { Form } from "../made-up.js";
import { routeOf } from "../route.js";
import { ageUnknown, animalOutside } from "./animal.js";
import { courseOutside, courseShort } from "./course.js";
import { doseOutside } from "./dose.js";
import type { Dosing } from "./dosing.js";
import { intervalOutside } from "./interval.js";
import { doubtfulUnit } from "./unit.js";

/**
 * What the rules of the table have to say of one step of a course. A medicine may be given in several ways; it is enough to
 * keep one of them. Where none is kept, the one that is broken in the fewest ways is told. Usual ranges are looked at only
 * where nothing is published.
 */
export function limitProblems(row: MedicineRow, dosing: Dosing): Problem[] {
  const [best] = rulesFor(row, dosing.asked, dosing.form)
    .map((regimen) => ({ regimen, broken: broken(regimen, dosing) }))
    .sort((a, b) => a.broken.length - b.broken.length || narrowness(a.regimen) - narrowness(b.regimen));
  if (!best) return [];
  if (best.broken.length > 0) return doubtfulUnit(rulesFor(row, dosing.asked, dosing.form), dosing) ?? best.broken;
  return [courseShort, ageUnknown, forOneUse].flatMap((remark) => remark(best.regimen, dosing));
}

/** A medicine that no label covers in this species, route and form. */
export function labelProblems(row: MedicineRow, asked: Asked, form: Form): Problem[] {
  if (rulesFor(row, asked, form).some(({ standing }) => standing === "published")) return [];
  const values = { medicine: asked.planned.name, context: asked.species, source: row.source };
  return [problem("not-labelled", asked.at("name"), values)];
}

function rulesFor(row: MedicineRow, { species, planned, months: age }: Asked, { kind, strength }: Form): Regimen[] {
  const all = row.regimens.filter(
    ({ species: of, route, forms, strengths, months }) =>
      of.includes(species) &&
      route.includes(routeOf(planned)) &&
      (forms?.includes(kind) ?? true) &&
      (strengths?.includes(strength?.value ?? "") ?? true) &&
      // A rule for the young holds only where the animal is known to be young.
      !(age === null && months?.most != null),
  );
  const published = all.filter(({ standing }) => standing === "published");
  return published.length > 0 ? published : all;
}

const narrowness = ({ use }: Regimen) => (use === undefined ? 0 : 1);

const broken = (regimen: Regimen, dosing: Dosing): Problem[] =>
  [doseOutside, intervalOutside, courseOutside, animalOutside].flatMap((check) => check(regimen, dosing));

function forOneUse({ use, source }: Regimen, { asked, step }: Dosing): Problem[] {
  if (use === undefined || step.path.length > 0) return [];
  return [problem("labelled-for", asked.at("name"), { medicine: asked.planned.name, context: use, source })];
}

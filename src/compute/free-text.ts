import type { Plan } from "#plan/plan.js";
import { type Place, placeOf } from "#problems/place.js";

/** Words of the clinician's own that the owner reads. field: as the plan names it, "reason". */
export type FreeText = { field: string; text: string; language: string; at: Place };

/** All that the plan says to the owner in free text, language by language; staff write in the clinic's own. */
export function freeTextOf(plan: Plan): FreeText[] {
  const { clinic, places } = plan;
  const told = (told: Plan["reason"] | undefined, ...path: (string | number)[]): FreeText[] => {
    const field = String(path.findLast((step) => typeof step === "string"));
    if (told === undefined) return [];
    if (typeof told === "string")
      return [{ field, text: told, language: clinic.language, at: placeOf(places, ...path) }];
    return Object.entries(told).map(([language, text]) => ({
      field,
      text,
      language,
      at: placeOf(places, ...path, language),
    }));
  };
  return [
    ...told(plan.reason, "reason"),
    ...plan.medicines.flatMap(({ why, missed }, i) => [
      ...told(why, "medicines", i, "why"),
      ...told(missed, "medicines", i, "missed"),
    ]),
    ...(plan.feeding ?? []).flatMap((line, i) => told(line, "feeding", i)),
    ...told(clinic["after hours"].note, "clinic", "after hours", "note"),
    ...told(clinic.estimate?.terms, "clinic", "estimate", "terms"),
    ...(clinic.estimate?.["not included"] ?? []).flatMap((text, i) =>
      told(text, "clinic", "estimate", "not included", i),
    ),
  ];
}

import { type Place, type Places, placeOf } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import { checkShape } from "./check-shape.js";
import { clinicSchema } from "./clinic-schema.js";
import type { Clinic, Profile } from "./plan.js";
import { pricesSchema } from "./price-schema.js";
import { fieldOf, readText } from "./read-text.js";
import type { Source } from "./text-of.js";
import type { Written } from "./yaml.js";

/** The files a plan is read from: itself, the clinic profile it names, and the price list that the profile names. */
export type Sources = {
  plan: Source;
  clinic?: Source | undefined;
  prices?: Source | undefined;
};
type Placed<T> = Outcome<T> & { places: Places };

/** The path of the clinic profile that a plan names, or null: it is written in the plan, or cannot be read. */
export const clinicPath = (plan: Source): string | null => pathOf(fieldOf(readText(plan, "").data, "clinic"));

/** The path of the price list that a profile names, from the file the profile is in; null where it names none. */
export const pricesPath = (sources: Omit<Sources, "prices">): string | null => namedIn(sources, "prices")?.path ?? null;

/** A file that a clinic profile names in a field, and where it names it; null where it names none. */
export function namedIn({ plan, clinic }: Omit<Sources, "prices">, field: string): { path: string; at: Place } | null {
  const { data, places } = clinic ? readText(clinic, "clinic") : readText(plan, "");
  const path = pathOf(fieldOf(clinic ? data : fieldOf(data, "clinic"), field));
  return path === null ? null : { path, at: placeOf(places, "clinic", field) };
}

const pathOf = (named: unknown): string | null => (typeof named === "string" && named !== "" ? named : null);

/** The clinic profile and its prices, each in a file of its own or in what names it. inPlan: what the plan's shape made of it. */
export function readClinic(sources: Sources, plan: Written, inPlan: string | Profile | undefined): Placed<Clinic> {
  const profile = readProfile(sources.clinic, plan, inPlan);
  const named = pathOf(fieldOf(profile.data, "prices"));
  const listed = profile.value?.prices;
  const prices: Placed<Clinic["prices"]> =
    named === null
      ? { value: typeof listed === "object" ? listed : null, places: {}, problems: [] }
      : readPrices(sources.prices, named, { ...plan.places, ...profile.places });
  return {
    value: profile.value && prices.value && { ...profile.value, prices: prices.value },
    places: { ...profile.places, ...prices.places },
    problems: [...profile.problems, ...prices.problems],
  };
}

/** data: the profile as it stands, for what can be followed even where the rest of it is wrong. */
function readProfile(
  source: Source | undefined,
  plan: Written,
  inPlan: string | Profile | undefined,
): Placed<Profile> & { data: unknown } {
  const inline = fieldOf(plan.data, "clinic");
  if (typeof inPlan === "object") return { value: inPlan, data: inline, places: {}, problems: [] };
  if (!source) {
    const missing =
      typeof inPlan === "string" ? [problem("file-not-found", placeOf(plan.places, "clinic"), { path: inPlan })] : [];
    return { value: null, data: inline, places: {}, problems: missing };
  }
  const { data, places, problems } = readText(source, "clinic");
  if (data === undefined) return { value: null, data, places, problems };
  const shaped = checkShape(clinicSchema, data, places, "clinic");
  return {
    value: problems.length > 0 ? null : shaped.value,
    data,
    places,
    problems: [...problems, ...shaped.problems],
  };
}

function readPrices(source: Source | undefined, path: string, profile: Places): Placed<Clinic["prices"]> {
  if (!source) {
    const at = placeOf(profile, "clinic", "prices");
    return { value: null, places: {}, problems: [problem("file-not-found", at, { path })] };
  }
  const { data, places, problems } = readText(source, "clinic/prices");
  if (data === undefined) return { value: null, places, problems };
  const shaped = checkShape(pricesSchema, data, places, "clinic", "prices");
  return { value: problems.length > 0 ? null : shaped.value, places, problems: [...problems, ...shaped.problems] };
}

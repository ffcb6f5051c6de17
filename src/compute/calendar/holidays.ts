import { createRequire } from "node:module";
import type HolidayTables from "date-holidays";
import type { Plan } from "#plan/plan.js";
import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Day } from "../facts.js";

type Tables = typeof HolidayTables;

/**
 * Fetched only where a profile asks for holidays: it carries those of 200 countries and takes long to load. Node hands
 * out the class itself, or a module around it where it was told to resolve packages as imports do.
 */
function tables(): HolidayTables {
  const loaded = createRequire(import.meta.url)("date-holidays") as Tables | { default: Tables };
  return new ("default" in loaded ? loaded.default : loaded)();
}

/** The clinic's public holidays in a year by day, with their names in the owner's language where known. */
export function holidaysIn({ clinic: { holidays }, owner }: Plan, year: number): Map<Day, string> {
  const days = new Map<Day, string>();
  if (!holidays) return days;
  const place = tables();
  if (holidays.region === undefined) place.init(holidays.country);
  else place.init(holidays.country, holidays.region);
  for (const { date, name, type } of place.getHolidays(year, owner.language[0]?.split("-")[0])) {
    const day = date.slice(0, 10);
    if (type === "public" && !holidays.open.includes(day) && !days.has(day)) days.set(day, name);
  }
  return days;
}

/** The country and the region of the profile's holidays are known. Problem: "holiday-place-unknown". */
export function checkHolidayPlace({ clinic: { holidays }, places }: Plan): Problem[] {
  if (!holidays) return [];
  const at = (field: string) => placeOf(places, "clinic", "holidays", field);
  const countries = Object.keys(tables().getCountries());
  if (!countries.includes(holidays.country)) {
    const near = nearest(holidays.country, countries);
    return [problem("holiday-place-unknown", at("country"), { given: holidays.country, near })];
  }
  const regions = Object.keys(tables().getStates(holidays.country) ?? {});
  if (holidays.region === undefined || regions.includes(holidays.region)) return [];
  const near = nearest(holidays.region, regions);
  return [problem("holiday-place-unknown", at("region"), { given: holidays.region, near })];
}

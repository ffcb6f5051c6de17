/** What the clinician wrote, checked and typed by ./schema.ts, its one source. Plain data: decimals stay strings. */
import type { z } from "zod";
import type { Places } from "#problems/place.js";
import type { clinicSchema } from "./clinic-schema.js";
import type { pricesSchema } from "./price-schema.js";
import type { planSchema } from "./schema.js";

/** A profile as it was written: its prices may be the path of a file. */
export type Profile = z.output<typeof clinicSchema>;
export type Clinic = Omit<Profile, "prices"> & { prices: z.output<typeof pricesSchema> };
type Written = z.output<typeof planSchema>;

/** A plan with its clinic profile, and where every value of both was written ("clinic/..." for the profile's). */
export type Plan = Omit<Written, "clinic"> & { clinic: Clinic; places: Places };

export type PlannedCare = Plan["care"][number];
export type PlannedMedicine = NonNullable<Plan["medicines"]>[number];

export type { Edit } from "./edit-plan.js";
export type { VisitEntry } from "./visit-entry.js";

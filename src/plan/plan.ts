/** What the clinician wrote, checked and typed by ./schema.ts, its one source. Plain data: decimals stay strings. */
import type { z } from "zod";
import type { Places } from "#problems/place.js";
import type { clinicSchema } from "./clinic-schema.js";
import type { planSchema } from "./schema.js";

export type Clinic = z.output<typeof clinicSchema>;
type Written = z.output<typeof planSchema>;

/** A plan with its clinic profile, and where every value of both was written ("clinic/..." for the profile's). */
export type Plan = Omit<Written, "clinic"> & { clinic: Clinic; places: Places };

export type PlannedCare = Plan["care"][number];
export type PlannedMedicine = NonNullable<Plan["medicines"]>[number];

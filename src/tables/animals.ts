import { z } from "zod";
import { slug, source } from "./row.js";

const oneOf = z.array(z.string()).min(1).optional();

/**
 * What an animal may be besides its species: "diabetic", "old". A plan says it where `said` holds; the rest of the row says
 * from what else it follows. One of those is enough.
 */
export const animalSchema = z.strictObject({
  id: slug,
  aliases: z.array(slug).default([]),
  said: z.boolean(),
  /** The sex that it needs. */
  sex: z.enum(["female", "male"]).optional(),
  /** Words of a breed, in lower case: "pug" holds for "Pug cross". */
  breed: oneOf,
  /** Words of a medicine the animal takes, in lower case. */
  takes: oneOf,
  /** A group of shared/medicines.json: one of its medicines is given or taken. Read, its names stand in takes. */
  given: slug.optional(),
  /** Younger than, or at least as old as, this many months on the day of discharge. */
  youngerThan: z.int().min(1).optional(),
  atLeast: z.int().min(1).optional(),
  source,
});

export type Animal = z.output<typeof animalSchema>;

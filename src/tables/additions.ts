import { z } from "zod";
import { slug, source } from "./row.js";
import { nearby, region } from "./sites.js";
import { says } from "./statements.js";

const oneOf = <T extends z.ZodType>(item: T) => z.array(item).min(1).optional();

/** When an addition holds: every line of it must, and a line holds when one of its words does. Nothing here: always. */
const when = z.strictObject({
  traits: oneOf(slug),
  traitsNot: oneOf(slug),
  region: oneOf(region),
  near: oneOf(nearby),
  site: oneOf(slug),
  bandage: oneOf(slug),
  /** Said of a place that no bandage covers, which can be looked at. */
  bandaged: z.literal(false).optional(),
  species: oneOf(z.enum(["dog", "cat"])),
  sex: oneOf(z.enum(["female", "male"])),
  /** What the animal is, as rows of shared/animals.json, and what it must not be. */
  animal: oneOf(slug),
  animalNot: oneOf(slug),
});

/** What is said besides the topic's own statements, for a site, a bandage or an animal. */
export const additionSchema = says.extend({ id: slug, when, source });

/** Whether one of the words wanted is among those held; where none is wanted, always. */
export const meets = <T>(wanted: readonly T[] | undefined, held: readonly T[] | null | undefined): boolean =>
  !wanted || wanted.some((one) => held?.includes(one));

export type Addition = z.output<typeof additionSchema>;

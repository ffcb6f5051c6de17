import { z } from "zod";
import { amount, slug, source } from "./row.js";
import { region } from "./sites.js";

const kind = z.strictObject({
  id: slug,
  /** It works by standing out past the nose. */
  passesNose: z.boolean(),
  /** Regions it keeps the teeth and a scratching hind paw from. */
  protects: z.array(region).min(1),
  /** How to wear it: rows of shared/statements/collar.json. */
  statements: z.array(slug).min(1),
  /** And what is besides to be known of it for such an animal, by row of shared/animals.json. */
  ofAnimal: z.record(slug, z.array(slug).min(1)).default({}),
  source,
});

const until = z.strictObject({
  /** What a collar may wait for, and the visits after which that has happened. */
  event: z.string(),
  id: slug,
  visits: z.array(slug).min(1),
  /** Whether a collar that comes off before the last of them comes off too early, whatever it waits for. */
  tooEarlyBefore: z.boolean(),
  source,
});

const range = z.strictObject({ from: amount, to: amount });
const measures = z.strictObject({ neck: range, length: range, source });

const margin = z.strictObject({ margin: amount, source });

/** How a collar must fit. */
export const collarRules = z.strictObject({
  /** The least it must pass the nose by. Sources disagree: others may be chosen later. */
  pastNose: margin.extend({ others: z.array(margin) }),
  fingers: z.strictObject({ least: z.int(), most: z.int(), source }),
  /** By the word of the plan. */
  kinds: z.strictObject({ cone: kind, "soft cone": kind, ring: kind }),
  until: z.array(until).min(1),
  /** Measures beyond these are asked about: they are more often a slip of the pen than an animal. */
  plausible: z.strictObject({ dog: measures, cat: measures }),
});

export type CollarRules = z.output<typeof collarRules>;

import { z } from "zod";
import { slug, source } from "./row.js";

export const region = z.enum(["head", "neck", "trunk", "upper leg", "lower leg", "paw", "tail", "rear"]);
export const nearby = z.enum(["eye", "ear", "mouth", "airway", "lungs", "bowel"]);

/** A place on the body. near: what lies so close that it swells or is harmed with it. */
export const siteSchema = z.strictObject({
  id: slug,
  aliases: z.array(slug).default([]),
  region,
  near: z.array(nearby).default([]),
  /** Whether left or right must be said, may be said, or makes no sense. */
  sides: z.enum(["needed", "may", "none"]),
  source,
});

export type Site = z.output<typeof siteSchema>;

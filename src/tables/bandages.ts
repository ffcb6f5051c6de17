import { z } from "zod";
import { slug, source } from "./row.js";
import { region } from "./sites.js";
import { says } from "./statements.js";

/** A kind of bandage: the regions it can hold on, and what it adds to the care. */
export const bandageSchema = says.extend({
  id: slug,
  aliases: z.array(slug).default([]),
  regions: z.array(region).min(1),
  source,
});

export type Bandage = z.output<typeof bandageSchema>;

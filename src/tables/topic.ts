import { z } from "zod";
import { slug, source } from "./row.js";
import { says } from "./statements.js";

/** One kind of care: who may have it, what it needs, and what it says. */
export const topicSchema = says.extend({
  id: slug,
  species: z.array(z.enum(["dog", "cat"])).min(1),
  sex: z
    .array(z.enum(["female", "male"]))
    .min(1)
    .default(["female", "male"]),
  /** What it has in common with other topics ("wound", "open", "stitches"); additions are chosen by it. */
  traits: z.array(slug).default([]),
  site: z.enum(["needed", "may", "none"]),
  bandage: z.enum(["needed", "may", "none"]),
  /** Visits it usually has, as kinds of shared/visits.json; with course "needed" a plan without any is asked about. */
  visits: z.array(slug).default([]),
  course: z.enum(["needed", "may"]),
  /** The course it often has, in the words of a plan's course: for a clinician to start from, never put in by itself. */
  usualCourse: z.array(z.string().min(1)).default([]),
  /** The kind of visit that ends what it is about (row of shared/visits.json): a drain comes out. */
  overAfter: slug.optional(),
  /** The topic that takes its place once the wound is closed. */
  onceClosed: slug.optional(),
  collar: z.enum(["needed", "may"]),
  /** Until when a collar usually stays on, in the words of a plan's collar. */
  usualUntil: z.string().optional(),
  /** Animals (shared/animals.json) that such care at home may not suit: a plan for one is asked about. */
  doubtful: z.array(slug).default([]),
  source,
});

export type Topic = z.output<typeof topicSchema>;

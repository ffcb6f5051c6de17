import { z } from "zod";
import { price } from "./scalars/number.js";
import { weight } from "./scalars/quantity.js";
import { words } from "./scalars/text.js";
import { localTime } from "./scalars/time.js";

/** What was seen at a visit, in the words of the trade. */
const seen = z.strictObject({
  discharge: z.enum(["none", "little", "moderate", "much"]).optional().describe("How much the wound discharges"),
  tissue: z
    .array(z.enum(["pink", "red", "pale", "yellow", "grey", "black"]))
    .max(6)
    .default([]),
  smell: z.enum(["none", "slight", "bad"]).optional(),
  bandage: z.enum(["dry", "damp", "soaked", "slipped", "chewed", "off"]).optional(),
  pain: z.enum(["none", "mild", "moderate", "severe"]).optional(),
});

/** What was decided about the visits that follow. */
export const decisions = ["continue", "stretch", "close", "drain out", "stop"] as const;

/** One visit that took place: kept in every later revision of the plan. */
export const visitDone = z.strictObject({
  at: localTime,
  visit: z.array(words).min(1).max(6).describe("What it was for: change, closure"),
  seen: seen.optional(),
  did: z.array(words).max(20).default([]).describe("What was done, in a few words"),
  decided: z.enum(decisions),
  weight: weight.optional(),
  paid: price.optional(),
});

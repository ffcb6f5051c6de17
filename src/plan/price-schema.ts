import { z } from "zod";
import { priceRange, shareOrAmount } from "./scalars/number.js";
import { weight } from "./scalars/quantity.js";
import { told, words } from "./scalars/text.js";

/** The price for animals up to a weight; the lightest band that holds the patient counts, else the row's own price. */
const weightBand = z.strictObject({ "up to": weight, price: priceRange });

/** What a visit costs more at a time: of the bands that fit, the first written counts. */
const timeBand = z.strictObject({ when: z.enum(["after hours", "weekend"]), more: shareOrAmount });

/** One row of the price list; per says what it is charged by. */
const priced = z.strictObject({
  item: words.describe("What the plan calls it: bandage change"),
  name: told.optional().describe("What the owner reads, by language"),
  price: priceRange,
  "by weight": z.array(weightBand).max(20).default([]).describe("Prices for lighter animals"),
  "by time": z.array(timeBand).max(2).default([]).describe("With per: visit, what is added at that time"),
  per: z.enum(["once", "visit", "day", "unit"]).default("once"),
  visit: words.optional().describe("The kind of visit it is charged for: bandage change"),
  includes: z.array(words).max(20).default([]).describe("A package: what its price holds, such as bandage change x 5"),
  tax: z
    .union([words, z.array(words).min(1).max(5)])
    .optional()
    .describe("One or more names from taxes; without it the line is not taxed"),
});

/** The clinic's price list: in its profile, or a file of its own that is nothing but the list. */
export const pricesSchema = z.array(priced);

import { z } from "zod";
import { pricesSchema } from "./price-schema.js";
import { accent } from "./scalars/colour.js";
import { percent, shareOrAmount } from "./scalars/number.js";
import { days, length, minutes } from "./scalars/quantity.js";
import { email, language, phone, told, words } from "./scalars/text.js";
import { clock, day, hours } from "./scalars/time.js";

/** Whom to ring when the clinic is closed. */
const afterHours = z.strictObject({
  name: words,
  phone,
  address: z.array(words).max(6).default([]),
  note: told.optional(),
});

const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

const week = z.strictObject(
  Object.fromEntries(weekdays.map((name) => [name, hours])) as Record<(typeof weekdays)[number], typeof hours>,
);

const holidays = z.strictObject({
  country: z.string().regex(/^[A-Z]{2}$/),
  region: words.optional().describe("State, province or canton, as ISO 3166-2 has it after the dash: IL"),
  open: z.array(day).default([]).describe("Holidays on which the clinic is open all the same"),
});

const partner = z.strictObject({ name: words, phone, address: z.array(words).max(6).default([]), hours: week });

const closure = z.union([day, z.strictObject({ from: day, to: day, name: words.optional() })]);

/** A clinician who is not in every day. */
const clinician = z.strictObject({
  name: words.describe("As plans write it"),
  days: z.array(z.enum(weekdays)).min(1).max(7).describe("The days of the week on which they are in"),
  away: z.array(closure).max(200).default([]),
  sees: z
    .array(words)
    .max(20)
    .optional()
    .describe("Visits only they can do, such as closure; without it, every visit of their cases"),
});

/** A collar the clinic has in stock: how deep it is and which necks it fits. */
const stocked = z.strictObject({
  size: words,
  kind: z.enum(["cone", "soft cone", "ring"]).default("cone"),
  depth: length,
  neck: z.strictObject({ from: length, to: length }),
});

/** The clinic profile: who to ring, when it is open, what things cost. Written once, used by every plan. */
export const clinicSchema = z.strictObject({
  name: words,
  address: z.array(words).min(1).max(6),
  phone,
  email: email.optional(),
  "after hours": afterHours,
  "time zone": z.string().meta({ examples: ["America/Chicago"] }),
  country: z.string().regex(/^[A-Z]{2}$/),
  language: language.describe("The language the staff write in"),
  currency: z.string().regex(/^[A-Z]{3}$/),
  hours: week,
  "last appointment": minutes.optional().describe("How long before closing the last visit may begin"),
  visit: minutes.optional().describe("How long a visit takes unless its kind says otherwise"),
  closed: z.array(closure).default([]),
  clinicians: z.array(clinician).max(50).default([]).describe("Clinicians whose days count for their cases"),
  holidays: holidays
    .optional()
    .describe("Public holidays, when the clinic is closed; a day decided for one year only goes under closed"),
  partner: partner.optional().describe("Who sees our patients on days we are closed"),
  taxes: z
    .array(
      z.strictObject({
        name: told.describe("What a price calls it, and the owner reads: by language, or in the staff's alone"),
        rate: percent,
        inclusive: z.enum(["yes", "no"]).default("no"),
      }),
    )
    .default([]),
  prices: z.union([words, pricesSchema]).default([]).describe("The price list, or the path of its file, from this one"),
  weekend: z.array(z.enum(weekdays)).max(7).default(["saturday", "sunday"]),
  estimate: z
    .strictObject({
      called: z
        .enum(["estimate", "quote"])
        .default("estimate")
        .describe("A quote binds in some countries: say quote only if you mean it"),
      valid: days.optional(),
      "ring before passing": shareOrAmount.optional().describe("How far over the estimate before you ring"),
      deposit: shareOrAmount
        .optional()
        .describe("What you ask for beforehand: an amount, or a share of the likely total"),
      terms: told.optional(),
      "not included": z.array(told).default([]),
    })
    .optional(),
  collars: z.array(stocked).default([]),
  household: z
    .strictObject({ morning: clock, evening: clock })
    .optional()
    .describe("When owners usually give medicines"),
  paper: z.enum(["letter", "a4"]).default("letter"),
  letterhead: z.array(told).max(3).default([]).describe("Lines of your own under the clinic's name and address"),
  logo: words.optional().describe("The path of your logo, an SVG or PNG, from this file"),
  accent: accent.optional().describe("The one quiet colour of marks and links, dark enough to read on white"),
  "sign off": z.array(words).max(4).default([]).describe("Who signs for the clinic, besides the clinician of the case"),
});

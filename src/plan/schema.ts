import { z } from "zod";
import { clinicSchema } from "./clinic-schema.js";
import { counting, price, priceRange, shareOrAmount, whole } from "./scalars/number.js";
import { days, length, quantity, weight } from "./scalars/quantity.js";
import { scalar } from "./scalars/scalar.js";
import { email, languages, longest, told, words } from "./scalars/text.js";
import { birth, clock, day, localTime } from "./scalars/time.js";
import { unavailable } from "./scalars/unavailable.js";
import { visitDone } from "./visit-schema.js";

const patient = z.strictObject({
  name: words,
  species: z.enum(["dog", "cat"]),
  sex: z.enum(["female", "male", "spayed female", "neutered male"]),
  born: birth.optional(),
  weight,
  "weight before": weight.optional().describe("What it weighed at an earlier visit, to bear the weight out"),
  breed: words.optional(),
  allergies: z.array(words).max(20).default([]),
  conditions: z.array(words).max(10).default([]).describe("pregnant, nursing, diabetic, brachycephalic"),
  takes: z.array(words).max(20).default([]).describe("Medicines the animal already takes"),
});

const owner = z.strictObject({
  name: words,
  language: languages,
  email: email.optional(),
  address: z.array(words).max(6).optional().describe("Where the law asks for it on the label of a medicine"),
});

/** One thing the animal is cared for, with its visits in the words of the course language. */
const care = z.strictObject({
  topic: words.describe("hearthsheet topics lists them"),
  site: words.optional().describe("Where on the body: left cheek"),
  bandage: words.optional().describe("tie-over"),
  course: z
    .array(words)
    .max(20)
    .default([])
    .describe("One line a run of visits: change every day for 3-5 days, first tomorrow"),
});

/** The units of a dose the clinician orders: by weight, or the whole amount. */
const ordered = quantity(
  "Dose",
  {
    "mg/kg": "mg/kg",
    "mg/lb": "mg/lb",
    "mg/m2": "mg/m2",
    mg: "mg",
    "mL/kg": "mL/kg",
    "IU/kg": "IU/kg",
    "units/kg": "IU/kg",
    IU: "IU",
    units: "IU",
  },
  "13.75 mg/kg",
  "100 mg",
);

const given = {
  tablet: "tablet",
  tablets: "tablet",
  capsule: "capsule",
  capsules: "capsule",
  mL: "mL",
  ml: "mL",
  drop: "drop",
  drops: "drop",
  spray: "spray",
  sprays: "spray",
  patch: "patch",
  patches: "patch",
  application: "application",
  applications: "application",
  cm: "cm",
  in: "in",
  unit: "unit",
  units: "unit",
} as const;

/** What is put in the animal each time. */
const give = quantity("What to give", given, "0.5 tablet", "1.2 mL");

/** How much of it is in the house: counted in what is given, or in what it comes in where nobody counts that. */
const inHouse = quantity(
  "How much of it",
  { ...given, bottle: "bottle", bottles: "bottle", tube: "tube", tubes: "tube", vial: "vial", vials: "vial" },
  "14 tablets",
  "2 bottles",
);

/** What a bottle or a vial holds, or a tube. */
const holds = quantity("What it holds", { mL: "mL", ml: "mL", g: "g" }, "5 mL", "3.5 g");

const solid = quantity("Strength", { mg: "mg", IU: "IU" }, "375 mg");
const fluid = quantity("Strength", { "mg/mL": "mg/mL", "mg/ml": "mg/mL", "IU/mL": "IU/mL" }, "50 mg/mL");

const insulin = quantity("Insulin", { "units/mL": "IU/mL", "U/mL": "IU/mL", "IU/mL": "IU/mL" }, "40 units/mL");

/** How a syringe is marked: in millilitres, or in units of one strength of insulin. */
const syringe = z.union([z.enum(["U-40", "U-100"]), quantity("Syringe graduation", { mL: "mL", ml: "mL" }, "0.1 mL")]);

/** A medicine that the clinic has not given yet. */
const notGiven = scalar(
  { title: "Not given", description: "The clinic has not given it yet", examples: ["not given"] },
  (text) => (text === "not given" ? text : { fault: "time-unreadable", values: { given: text } }),
);

/** Where a medicine goes; for an ear or an eye, which. */
const routes = [
  "mouth",
  "ear",
  "left ear",
  "right ear",
  "both ears",
  "eye",
  "left eye",
  "right eye",
  "both eyes",
  "skin",
  "under the skin",
] as const;

/** How a medicine goes on after its first days, in a taper or after a loading dose. */
const nextStep = z.strictObject({ dose: ordered.optional(), give: give.optional(), every: words, for: days });

/** One medicine that goes home. Give the dose or what to give; the tool works out the other. */
const medicine = z.strictObject({
  name: words,
  tablet: solid.optional(),
  capsule: solid.optional(),
  liquid: fluid.optional(),
  drops: words.optional(),
  ointment: words.optional(),
  spray: words.optional(),
  patch: words.optional(),
  insulin: insulin.optional(),
  splits: z.enum(["whole", "halves", "quarters"]).optional().describe("Into what the tablet may be cut"),
  syringe: syringe.optional().describe("0.1 mL; of insulin, U-40 or U-100"),
  route: z.enum(routes).default("mouth"),
  dose: ordered.optional(),
  give: give.optional(),
  every: words.describe("12 h, 24 h, once a day, twice a day, every other day"),
  "as needed": words.optional().describe("at most 3 a day"),
  for: days.optional(),
  next: z.array(nextStep).max(6).default([]).describe("The steps of a taper: give, every and for, one after the other"),
  until: day.optional().describe("The day of the last dose, held against for"),
  dispense: inHouse.optional().describe("How much goes home, if not worked out: 14 tablets, 2 bottles"),
  container: holds.optional().describe("What one bottle, tube or vial holds: 5 mL, 3.5 g"),
  "drops per mL": counting.optional().describe("What the dropper makes of a millilitre; 20 unless said"),
  "once opened": days.optional().describe("How long it may be used once it is opened or mixed"),
  "last given": z
    .union([notGiven, clock, localTime])
    .optional()
    .describe("When the clinic last gave it, or not given; a time alone is today's"),
  first: z.union([clock, localTime]).optional().describe("When to give the first dose at home, if not worked out"),
  food: z.enum(["with", "without", "either"]).optional(),
  why: told.optional().describe("What it is for, in the owner's words"),
  started: localTime.optional().describe("In a revision: when the paper that began it was handed out"),
  left: inHouse.optional().describe("In a revision: how much of it is in the house, counted"),
  expires: day.optional().describe("The last day it may be used"),
  missed: told.optional().describe("What to do after a missed dose, if not to ring you"),
});

const collar = z.strictObject({
  type: z.enum(["cone", "soft cone", "ring"]).default("cone"),
  neck: length,
  muzzle: length.optional(),
  length: length.describe("From the collar line to the tip of the nose"),
  until: words.describe("bandage off, sutures out, drain out, recheck, or a day"),
});

/** What comes off one item of the estimate, or off all of it. */
const discount = z.strictObject({
  off: shareOrAmount,
  on: words.optional().describe("An item of this estimate; without it, the whole"),
  name: told.optional().describe("What the owner reads"),
});

/** What one day before this paper comes to, taxes in. */
const dayBefore = z.strictObject({
  day,
  charged: price.optional().describe("What the clinic has charged for it"),
  expected: priceRange.optional().describe("Of what is not charged yet: what it was expected to come to"),
});

const estimate = z.strictObject({
  paid: price.default("0"),
  before: z.array(dayBefore).max(100).default([]).describe("In a revision: the days before it, one by one"),
  deposit: shareOrAmount.optional().describe("Asked for beforehand, if not what the clinic always asks"),
  discounts: z.array(discount).max(20).default([]),
  items: z.array(words).max(60).describe("bandage change; sedation if needed; closure if done"),
});

/** A reason for going on where the tool asks: kept in the record. */
const allowed = z.strictObject({
  problem: words,
  for: z
    .string()
    .min(1)
    .max(longest)
    .optional()
    .describe("What it is given for, as check prints it: carprofen, 6 mg/kg"),
  reason: words,
});

/** The revision this one takes the place of. */
const revises = z.strictObject({
  plan: words.describe("Path of the earlier plan, from this file"),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});

/** The plan of one case: the single source of its types, its messages and its JSON Schema. */
export const planSchema = z.strictObject({
  format: z.literal("hearthsheet/1"),
  clinic: z.union([z.string(), clinicSchema]).describe("Path of the clinic profile, from this file"),
  case: words.optional().describe("The clinic's own number for this case"),
  revision: whole.default(0).describe("0, and one more after each visit: hearthsheet revise writes it"),
  revises: revises.optional(),
  done: z.array(visitDone).max(100).default([]).describe("Visits that took place, the first one first"),
  discharged: localTime.describe("When this paper is handed out"),
  clinician: words.optional(),
  patient,
  owner,
  reason: told,
  care: z.array(care).min(1).max(12),
  booked: z.array(localTime).max(60).default([]).describe("Visits already agreed"),
  medicines: z.array(medicine).max(20).default([]),
  feeding: z.array(told).max(10).optional().describe("Food and supplements, a line each, in the owner's words"),
  household: z.strictObject({ morning: clock, evening: clock }).optional(),
  collar: collar.optional(),
  estimate: estimate.optional(),
  unavailable: z.array(unavailable).max(200).default([]).describe("When the owner cannot come"),
  allow: z.array(allowed).max(20).default([]),
});

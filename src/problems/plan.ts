import { ask, note, stop } from "./kind.js";

type Nothing = Record<never, never>;

/** What is written in a plan or a clinic profile, read on its own. */
export const planKinds = {
  "yaml-syntax": stop<{ detail: string }>(),
  "alias-not-allowed": stop<Nothing>(),
  "character-broken": stop<Nothing>(),
  "nested-too-deep": stop<{ limit: number }>(),
  "field-missing": stop<{ field: string }>(),
  "field-unknown": stop<{ field: string; near: readonly string[]; known: readonly string[] }>(),
  "field-twice": stop<{ field: string }>(),
  "wrong-shape": stop<{ field: string; expected: string }>(),
  "not-a-choice": stop<{ given: string; near: readonly string[]; choices: readonly string[] }>(),
  "text-too-long": stop<{ field: string; limit: number }>(),
  "unit-missing": stop<{ given: string; units: readonly string[] }>(),
  "unit-unknown": stop<{ given: string; units: readonly string[] }>(),
  "number-unreadable": stop<{ given: string }>(),
  "number-not-positive": stop<{ given: string }>(),
  "date-unreadable": stop<{ given: string }>(),
  "time-unreadable": stop<{ given: string }>(),
  "unavailable-unreadable": stop<{ given: string }>(),
  "time-skipped": stop<{ given: string; zone: string }>(),
  "phone-unreadable": stop<{ given: string }>(),
  "email-unreadable": stop<{ given: string }>(),
  "zone-unknown": stop<{ given: string; near: readonly string[] }>(),
  "language-unknown": stop<{ given: string }>(),
  "discharge-not-today": ask<{ discharged: { day: string }; today: { day: string } }>(),
  "born-after-discharge": stop<{ born: string }>(),
  "weight-implausible": ask<{ weight: string; species: string; least: string; most: string }>("weight"),
  "weight-not-of-neck": ask<{ weight: string; neck: string; least: string; most: string }>("weight", "neck"),
  "weight-changed": ask<{ weight: string; before: string }>("weight", "before"),
  "weight-not-borne-out": ask<{ weight: string; medicine: string }>("weight"),
  "date-past": stop<{ given: { day: string }; discharged: { day: string } }>(),
  "reason-not-translated": note<{ language: string; text: string }>(),
  "allow-unknown": stop<{ given: string; near: readonly string[] }>(),
};

import { ask, note, stop } from "./kind.js";

/** A medicine as the clinician named it. */
type Of = { medicine: string };
/** What a plan asks for, what a rule allows, and who says so. */
type Rule = Of & { given: string; limit: string; source: string };

/**
 * Medicines: what to give, when, and how far the rules go. A value named context chooses the form of the sentence. A reason
 * names the medicine, and the amount where there is one: a reason given for 6 mg/kg does not stand for 60 mg/kg.
 */
export const doseKinds = {
  // What it is and how much.
  "form-missing": stop<Of>(),
  "form-twice": stop<Of & { forms: readonly string[] }>(),
  "dose-missing": stop<Of>(),
  "strength-missing": stop<Of & { dose: string }>(),
  "strength-in-other-unit": stop<Of & { dose: string; strength: string }>(),
  "syringe-missing": stop<Of & { strength: string }>(),
  "syringe-mismatch": stop<Of & { strength: string; syringe: string }>(),
  "syringe-for-insulin": stop<Of>(),
  "give-in-other-unit": stop<Of & { given: string; context: string }>(),
  "give-not-measurable": stop<Of & { given: string; step: string }>(),
  "dose-and-give-differ": ask<Of & { ordered: string; given: string }>("medicine", "ordered", "given"),
  "per-kg-left-out": stop<Of & { given: string; amount: string; meant: string; would: string }>(),
  "strength-too-strong": stop<Of & { amount: string; context: string }>(),
  "rounding-too-far": ask<Of & { ordered: string; given: string; percent: string; most: number }>(
    "medicine",
    "ordered",
    "given",
  ),
  "many-at-once": ask<Of & { given: string; most: string }>("medicine", "given"),
  "dose-not-borne-out": ask<Of & { numbers: string; context: string }>("medicine", "numbers"),
  "days-not-borne-out": ask<Of & { days: string }>("medicine", "days"),
  "syringe-unlikely": ask<Of & { given: string; syringe: string; context: string }>("medicine", "syringe"),
  "strength-unlisted": ask<Of & { strength: string; known: readonly string[]; source: string }>("medicine", "strength"),
  "eye-or-ear-not-said": ask<Of & { context: string }>("medicine"),
  "route-doubtful": ask<Of & { context: string }>("medicine"),

  // How often and for how long.
  "every-unreadable": stop<{ given: string }>(),
  "as-needed-unreadable": stop<{ given: string }>(),
  "as-needed-too-many": ask<Of & { most: number; hours: number }>("medicine", "most"),
  "days-missing": stop<Of>(),
  "days-not-whole": stop<Of & { days: string }>(),
  "days-very-many": ask<Of & { days: number; most: number }>("medicine", "days"),
  "medicine-runs-out": ask<Of & { left: string; needed: string }>("medicine"),
  "expires-before-end": stop<Of & { expires: { day: string }; last: { day: string } }>(),
  "label-lacks": note<{ medicines: readonly string[]; context: string; source: string }>(),
  "dispensed-too-little": stop<Of & { given: string; needed: string; context: string }>(),
  "dispensed-too-much": ask<Of & { given: string; needed: string }>("medicine", "given"),
  "dispensed-in-other-unit": stop<Of & { given: string; unit: string; context: string }>(),
  "days-and-until-differ": stop<Of & { until: { day: string }; last: { day: string } }>(),

  // Bottles, tubes and vials.
  "container-not-said": note<Of & { needed: string; context: string }>(),
  "container-in-other-unit": stop<Of & { given: string }>(),
  "container-unlikely": ask<Of & { given: string; least: number; most: number }>("medicine", "given"),
  "containers-many": ask<Of & { needed: string; most: number }>("medicine", "needed"),
  "drops-unlikely": ask<Of & { drops: number; least: number; most: number }>("medicine", "drops"),
  "opened-too-short": ask<Of & { open: number; days: number }>("medicine", "open"),
  "opened-very-long": ask<Of & { days: number; most: number }>("medicine", "days"),
  "left-not-believable": ask<Of & { left: string; expected: string }>("medicine", "left"),

  // The owner's clock.
  "last-given-missing": ask<Of>("medicine"),
  "last-given-after-discharge": stop<Of & { given: string }>(),
  "first-before-discharge": stop<Of & { given: string }>(),
  "first-dose-late": ask<Of & { hours: string; every: number; first: string }>("medicine", "first"),
  "doses-too-close": ask<Of & { hours: string; least: string; every: number }>("medicine", "hours"),
  "household-times-uneven": ask<Of & { morning: string; evening: string; every: number }>("medicine"),

  // Published limits.
  "medicine-unknown": note<{ given: string }>(),
  "medicine-misspelt": ask<Of & { near: readonly string[] }>("medicine"),
  "medicine-twice": ask<Of>("medicine"),
  "not-labelled": ask<Of & { context: string; source: string }>("medicine"),
  "labelled-for": note<Of & { context: string; source: string }>(),
  "never-for-species": stop<Of & { context: string; source: string }>(),
  "may-hold-poison": ask<Of & { context: string; source: string }>("medicine", "context"),
  "dose-unit-doubtful": ask<Of & { given: string; other: string }>("medicine", "given"),
  "dose-over-limit": ask<Rule & { context: string }>("medicine", "given"),
  "dose-under-limit": ask<Rule & { context: string }>("medicine", "given"),
  "dose-unusual": ask<Rule & { context: string }>("medicine", "given"),
  "doses-too-often": ask<Of & { every: number; limit: number; source: string }>("medicine", "every"),
  "doses-too-seldom": ask<Of & { every: number; limit: number; source: string }>("medicine", "every"),
  "days-over-limit": ask<Of & { days: number; limit: number; source: string }>("medicine", "days"),
  "days-under-limit": note<Of & { days: number; limit: number; source: string }>(),
  "days-far-under-limit": ask<Of & { days: number; limit: number; source: string }>("medicine", "days"),
  "doses-over-limit": ask<Of & { doses: number; limit: number; source: string }>("medicine", "doses"),
  "weight-outside-limit": ask<Rule>("medicine", "given"),
  "age-outside-limit": ask<Of & { months: number; limit: string; source: string }>("medicine", "months"),
  "age-unknown": note<Of & { limit: string; source: string }>(),

  // Other medicines and allergies.
  "never-together": ask<Of & { other: string; source: string }>("medicine", "other"),
  "too-soon-after": ask<Of & { other: string; ended: { day: string }; days: number; source: string }>(
    "medicine",
    "other",
  ),
  "allergy-known": ask<Of & { allergy: string }>("medicine", "allergy"),
};

import { note, stop } from "./kind.js";

type Nothing = Record<never, never>;
type OneDay = { day: string };
type Money = { minor: number; currency: string };

/** What is asked for a new plan or clinic profile, what follows from each answer, and what stands above its fields. */
export const newKinds = {
  "new-keys": note<Nothing>(),
  "new-ask": note<{ context: string }>(),
  "new-comment": note<{ context: string }>(),
  "new-keep": note<Nothing>(),
  "new-reason": note<Nothing>(),
  "new-example": note<{ example: string }>(),
  "new-cancelled": note<Nothing>(),

  "new-exists": stop<{ path: string }>(),
  "new-unwritable": stop<{ path: string; detail: string }>(),
  "new-missing": stop<{ flags: readonly string[] }>(),
  "new-answer-missing": stop<Nothing>(),
  "new-answer-unreadable": stop<{ given: string; known: readonly string[] }>(),
  "new-name-and-weight": stop<{ given: string }>(),
  "new-collar-until": stop<{ known: readonly string[] }>(),
  "new-not-written": note<Nothing>(),
  "new-clinic-missing": stop<{ path: string }>(),
  "new-written": note<{ path: string }>(),
  "new-next": note<{ command: string }>(),

  // What follows from an answer.
  "new-price": note<{ price: Money }>(),
  "new-time": note<{ time: string }>(),
  "new-phone": note<{ phone: string; context: string }>(),
  "new-after": note<{ name: string; address: string; context: string }>(),
  "new-hours": note<{ hours: number }>(),
  "new-discharged": note<{ on: OneDay; time: string }>(),
  "new-food": note<{ medicine: string; context: string }>(),
  "new-rounded": note<{ medicine: string; percent: string }>(),
  "new-clinician": note<{ clinician: string }>(),
  "new-language": note<{ language: string }>(),
  "new-care": note<{ now: number; steps: number }>(),
  "new-collar-wanted": note<{ until: string; context: string }>(),
  "new-visits": note<{ fewest: number; most: number; from: OneDay; to: OneDay; context: string }>(),
  "new-visit": note<{ visit: string; from: OneDay; to: OneDay; context: string }>(),
  "new-medicine": note<{
    medicine: string;
    give: string;
    hours: number;
    doses: number;
    first: OneDay;
    at: string;
    last: OneDay;
    dispense: string;
    context: string;
  }>(),
  "new-medicine-left": note<{ medicine: string }>(),
  "new-collar": note<{ size: string; depth: string; past: string; context: string }>(),
  "new-cost": note<{ low: Money; likely: Money; high: Money }>(),
};

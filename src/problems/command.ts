import { note, stop } from "./kind.js";

type Aged = { path: string; of: { day: string }; today: { day: string } };

/** What the command line says of a plan, or of all of them, when it is done with them; and of the clock, before it notes a day. */
export const commandKinds = {
  "clock-behind": stop<Aged>(),
  "paper-long-past": note<Aged>(),
  "plan-ready": note<{ plan: string; note: number; allowed: number }>(),
  "plan-not-ready": note<{ plan: string; stop: number; ask: number; note: number }>(),
  "page-read": note<{ plan: string; language: string; measure: string; score: string; limit: string; aim: string }>(),
  "topic-sheet": note<{ context: string; given: string }>(),
  about: note<{ context: string; given: string; count: number }>(),
  "watch-open": note<{ url: string }>(),
  "watch-waits": note<{ plan: string }>(),
  "plans-done": note<{ plans: number; ready: number; stopped: number }>(),
};

import { note } from "./kind.js";

/** What the command line says of a plan, or of all of them, when it is done with them. */
export const commandKinds = {
  "plan-ready": note<{ plan: string; note: number; allowed: number }>(),
  "plan-not-ready": note<{ plan: string; stop: number; ask: number; note: number }>(),
  "page-read": note<{ plan: string; language: string; measure: string; score: string; limit: string; aim: string }>(),
  "topic-sheet": note<{ context: string; given: string }>(),
  about: note<{ context: string; given: string; count: number }>(),
  "watch-open": note<{ url: string }>(),
  "watch-waits": note<{ plan: string }>(),
  "plans-done": note<{ plans: number; ready: number; stopped: number }>(),
};

import { ask, note, stop } from "./kind.js";

type Nothing = Record<never, never>;
type OneDay = { day: string };

/** What was entered after a visit, held against what was known before it. */
export const reviseKinds = {
  "revise-ask": note<{ context: string }>(),
  "revise-visit-unknown": stop<{ given: string; known: readonly string[] }>(),
  "revise-charge-unknown": stop<Nothing>(),
  "revise-charge-day-unknown": stop<{ given: string; known: readonly string[] }>(),
  "revise-estimate-used": ask<{ items: readonly string[] }>(),
  "revise-not-after": stop<{ given: string; before: string }>(),
  "revise-gap-unreadable": stop<{ given: string }>(),
  "revise-medicine-unknown": stop<{ given: string; known: readonly string[] }>(),
  "revise-exists": stop<{ path: string }>(),
  "revise-written": note<{ path: string; revision: number }>(),
  "revise-booked-skipped": ask<{ day: OneDay }>(),
  "revise-visit-missed": ask<{ visit: string }>(),
  "revise-not-closed": ask<Nothing>(),
  "revise-closed-open": ask<Nothing>(),
  "revise-which-closed": stop<{ sites: readonly string[] }>(),
  "revise-closed-no-visit": ask<Nothing>(),
  "wound-told-open": ask<{ topic: string; closed: string; day: OneDay }>(),
  "bandage-told-on": ask<{ day: OneDay }>(),
  "care-told-on": ask<{ topic: string; visit: string; day: OneDay }>(),
  "revise-drain-in": ask<Nothing>(),
  "revise-discharge-rises": ask<{ amount: string }>(),
  "revise-weight-changed": ask<{ percent: string; share: number; medicines: readonly string[] }>(),
  "revise-ran-out": ask<{ medicine: string }>(),
  "earlier-missing": stop<{ path: string }>(),
  "earlier-changed": stop<{ path: string }>(),
};

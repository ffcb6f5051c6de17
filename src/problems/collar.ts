import { ask, note, stop } from "./kind.js";

/** The collar: whether one of the clinic's stock fits, protects, and stays on long enough. */
export const collarKinds = {
  "collar-none-in-stock": stop<{ kind: string }>(),
  "collars-not-listed": note<{ needed: string; neck: string; context: string }>(),
  "collar-too-short": stop<{ kind: string; needed: string; longest: string; size: string }>(),
  "collar-no-neck-fits": stop<{ kind: string; neck: string; needed: string }>(),
  "ring-no-neck-fits": stop<{ neck: string }>(),
  "collar-muzzle-wider": ask<{ muzzle: string; neck: string }>(),
  "collar-measure-implausible": ask<{ measure: string; given: string; species: string; from: string; to: string }>(),
  "collar-does-not-protect": ask<{ kind: string; site: string; reach: string; better: readonly string[] }>(),
  "collar-on-wound": note<{ site: string }>(),
  "collar-until-unknown": stop<{ given: string; known: readonly string[] }>(),
  "collar-until-past": stop<{ given: { day: string }; discharged: { day: string } }>(),
  /** ends: what this course has that ends a collar. */
  "collar-until-never": ask<{ event: string; visits: readonly string[]; ends: readonly string[] }>(),
  "collar-off-early": ask<{ until: { day: string }; needed: { day: string } }>(),
  "collar-advised": note<{ topic: string }>(),
};

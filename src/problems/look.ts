import { stop } from "./kind.js";

type Nothing = Record<never, never>;

/** How a clinic wants its pages to look: its logo and its colour. */
export const lookKinds = {
  "logo-unreadable": stop<{ path: string }>(),
  "logo-too-large": stop<{ bytes: number; limit: number }>(),
  "logo-broken": stop<Nothing>(),
  "logo-not-plain": stop<{ what: string }>(),
  "logo-has-words": stop<{ what: string }>(),
  "logo-too-detailed": stop<{ bytes: number; limit: number }>(),
  "colour-unreadable": stop<{ given: string }>(),
  "colour-too-pale": stop<{ given: string; contrast: string }>(),
};

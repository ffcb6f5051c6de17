import type { Helper } from "./helper.js";

/** {{#if (is certainty "booked")}}: whether a fact is one of the words that follow. */
const is: Helper = (_page, [given, ...choices]) => choices.includes(given);

export const chooseHelpers = { is };

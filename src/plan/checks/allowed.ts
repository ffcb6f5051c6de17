import { nearest } from "#problems/near.js";
import { placeOf } from "#problems/place.js";
import { codes, isCode, type Problem, problem } from "#problems/problem.js";
import type { Plan } from "../plan.js";

/** Each reason given in the plan names a problem that exists. */
export const checkAllowed = ({ allow, places }: Plan): Problem[] =>
  allow.flatMap(({ problem: given }, i) =>
    isCode(given)
      ? []
      : [problem("allow-unknown", placeOf(places, "allow", i, "problem"), { given, near: nearest(given, codes) })],
  );

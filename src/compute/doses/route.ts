import type { PlannedMedicine } from "#plan/plan.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Asked } from "./asked.js";

type Route = "mouth" | "ear" | "eye" | "skin" | "under the skin";

/** The kind of place that rules are for: "both eyes" is the eye. */
export function routeOf({ route }: PlannedMedicine): Route {
  if (route.includes("eye")) return "eye";
  return route.includes("ear") ? "ear" : (route as Route);
}

const outside = ["drops", "ointment", "spray", "patch", "insulin"] as const;

/** Which eye or ear it is for is not said; or it would go by mouth, as all does of which nothing is said, and hardly can. */
export function routeProblems({ planned, at }: Asked): Problem[] {
  const { name: medicine, route } = planned;
  if (route === "eye" || route === "ear")
    return [problem("eye-or-ear-not-said", at("route"), { medicine, context: route })];
  const form = outside.find((kind) => planned[kind] !== undefined);
  return route === "mouth" && form ? [problem("route-doubtful", at("route"), { medicine, context: form })] : [];
}

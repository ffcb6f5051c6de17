import type { Plan } from "#plan/plan.js";

/** Female or male, whole or neutered. */
export const sexOf = ({ sex }: Plan["patient"]): "female" | "male" => (sex.endsWith("female") ? "female" : "male");

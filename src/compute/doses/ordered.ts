import type { Amount } from "../facts.js";
import { Exact, pounds } from "./exact.js";
import { type Body, squareMetres } from "./surface.js";

/** What is ordered for one giving, in "mg", "IU" or "mL", for this animal: 13.75 mg/kg at 24.6 kg is 338.25 mg. */
export function orderedAmount({ value, unit }: Amount, body: Body): { amount: Exact; unit: string } {
  const [substance = unit, by = ""] = unit.split("/");
  const sizes: Record<string, () => Exact> = {
    kg: () => body.kg,
    lb: () => pounds(body.kg),
    m2: () => squareMetres(body),
  };
  return { amount: (sizes[by]?.() ?? new Exact(1)).times(value), unit: substance };
}

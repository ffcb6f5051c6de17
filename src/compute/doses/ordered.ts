import type { Amount } from "../facts.js";
import { Exact, pounds } from "./exact.js";

/** What is ordered for one giving, in "mg", "IU" or "mL", for this animal: 13.75 mg/kg at 24.6 kg is 338.25 mg. */
export function orderedAmount({ value, unit }: Amount, kg: Exact): { amount: Exact; unit: string } {
  const [substance = unit, by] = unit.split("/");
  const times = by === "kg" ? kg : by === "lb" ? pounds(kg) : new Exact(1);
  return { amount: times.times(value), unit: substance };
}

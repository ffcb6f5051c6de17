import type { Decimal } from "decimal.js";
import type { Clinic, Plan } from "#plan/plan.js";
import { exact } from "./money.js";

type Row = Clinic["prices"][number];

/** Kilograms in a pound, exact by the international yard and pound agreement of 1959. */
const poundInKg = "0.45359237";

export const inKg = ({ value, unit }: Plan["patient"]["weight"]): Decimal =>
  exact(value).times(unit === "lb" ? poundInKg : 1);

/** The price of a row for an animal: of the bands that reach its weight the lightest, else the row's own price. */
export function priceFor(row: Row, weight: Plan["patient"]["weight"]): Row["price"] {
  const [band] = row["by weight"]
    .filter((one) => inKg(one["up to"]).gte(inKg(weight)))
    .toSorted((a, b) => inKg(a["up to"]).cmp(inKg(b["up to"])));
  return band?.price ?? row.price;
}

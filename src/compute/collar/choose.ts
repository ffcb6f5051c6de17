import type { Decimal } from "decimal.js";
import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { CollarRules } from "#tables/collars.js";
import { atLeast, cm } from "./length.js";

type Stocked = Plan["clinic"]["collars"][number];
export type Asked = NonNullable<Plan["collar"]>;
type CollarKind = CollarRules["kinds"][Asked["type"]];

/**
 * The shortest collar of the clinic's stock that passes the nose by the margin and fits the neck; of two as short, the one
 * with the narrower neck. Problems say what would be needed; a clinic that lists no collars chooses by hand, by that.
 */
export function chooseCollar(plan: Plan, asked: Asked, kind: CollarKind, margin: Decimal): Outcome<Stocked> {
  const at = (field: string) => placeOf(plan.places, "collar", field);
  const stock = plan.clinic.collars.filter((collar) => collar.kind === asked.type);
  const none = (found: Outcome<Stocked>["problems"][number]) => ({ value: null, problems: [found] });

  const least = cm(asked.length).plus(margin);
  const needed = atLeast(least, asked.length.unit);
  if (plan.clinic.collars.length === 0) {
    const values = { needed, neck: written(asked.neck), context: kind.passesNose ? "" : "ring" };
    return none(problem("collars-not-listed", at("type"), values));
  }
  const longest = stock.toSorted((a, b) => cm(b.depth).cmp(cm(a.depth)))[0];
  if (!longest) return none(problem("collar-none-in-stock", at("type"), { kind: asked.type }));

  const longEnough = kind.passesNose ? stock.filter(({ depth }) => cm(depth).gte(least)) : stock;
  if (longEnough.length === 0) {
    const values = { kind: asked.type, needed, size: longest.size, longest: written(longest.depth) };
    return none(problem("collar-too-short", at("length"), values));
  }

  const neck = cm(asked.neck);
  const [best] = longEnough
    .filter(({ neck: { from, to } }) => cm(from).lte(neck) && neck.lte(cm(to)))
    .toSorted((a, b) => cm(a.depth).cmp(cm(b.depth)) || slack(a).cmp(slack(b)));
  if (best) return { value: best, problems: [] };
  const values = { neck: written(asked.neck), needed };
  return none(
    kind.passesNose
      ? problem("collar-no-neck-fits", at("neck"), { kind: asked.type, ...values })
      : problem("ring-no-neck-fits", at("neck"), { neck: values.neck }),
  );
}

const slack = ({ neck }: Stocked) => cm(neck.to).minus(cm(neck.from));
const written = ({ value, unit }: { value: string; unit: string }) => `${value} ${unit}`;

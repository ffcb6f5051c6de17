import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { CareTables } from "#tables/topics.js";
import { type SettledCare, settleCare } from "../signs/settle-care.js";
import type { Asked } from "./choose.js";

const types = ["cone", "soft cone", "ring"] as const;

/** Sites the collar does not keep the animal from, with the kinds that would; and a neck wound under its band. */
export function checkProtection(plan: Plan, { type }: Asked, tables: CareTables): Problem[] {
  const { kinds } = tables.collars;
  const at = placeOf(plan.places, "collar", "type");
  return settledCare(plan, tables).flatMap(({ where }) => {
    if (!where) return [];
    const { id: site, region } = where.site;
    if (!kinds[type].protects.includes(region)) {
      const reach = region === "head" || region === "neck" ? "hind paw" : "teeth";
      const better = types.filter((type) => kinds[type].protects.includes(region));
      return [problem("collar-does-not-protect", at, { kind: type, site, reach, better })];
    }
    return region === "neck" ? [problem("collar-on-wound", at, { site })] : [];
  });
}

/** A plan without a collar, where a topic asks for one. */
export const adviseCollar = (plan: Plan, tables: CareTables): Problem[] =>
  settledCare(plan, tables)
    .filter(({ topic }) => topic.collar === "needed")
    .map(({ topic, at }) => problem("collar-advised", at.topic, { topic: topic.id }));

/** The care that can be understood; what cannot is told by computeCare. */
const settledCare = (plan: Plan, tables: CareTables): SettledCare[] =>
  plan.care.flatMap((care, index) => settleCare(plan, index, care, tables).value ?? []);

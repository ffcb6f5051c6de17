import { placeText } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Conflict } from "#tables/conflicts.js";
import { idsOf } from "#tables/statements.js";
import type { Saying } from "./sayings.js";
import type { SettledCare } from "./settle-care.js";

/** Pairs of statements an owner cannot both follow, each told once for the two that say them, at the later of them. */
export function contradictions(sayings: readonly Saying[], conflicts: readonly Conflict[]): Problem[] {
  const found = conflicts.flatMap((conflict) =>
    sayings.flatMap((a) => sayings.flatMap((b) => contradiction(a, b, conflict))),
  );
  const key = ({ at, values }: Problem) => JSON.stringify([placeText(at), values]);
  return [...new Map(found.map((one) => [key(one), one])).values()];
}

function contradiction(a: Saying, b: Saying, { one, other, where }: Conflict): Problem[] {
  if (where === "same site" && !mayBeSameSite(a.care, b.care)) return [];
  const oneSaid = one.find((id) => idsOf(a.says).includes(id));
  const otherSaid = other.find((id) => idsOf(b.says).includes(id));
  if (!oneSaid || !otherSaid) return [];
  return [
    problem("care-contradicts", b.by.at, {
      one: readable(oneSaid),
      oneTopic: a.by.name,
      oneAt: placeText(a.by.at),
      other: readable(otherSaid),
      otherTopic: b.by.name,
    }),
  ];
}

/** The rows are named so that a clinician can read them: "steps.warm-compress" is the warm compress. */
export const readable = (id: string) => id.slice(id.indexOf(".") + 1).replaceAll("-", " ");

/** Care without a site may be anywhere, and a site without a side on either side. */
function mayBeSameSite(a: SettledCare, b: SettledCare): boolean {
  if (!a.where || !b.where) return true;
  const { where: one } = a;
  const { where: other } = b;
  return one.site.id === other.site.id && (!one.side || !other.side || one.side === other.side);
}

import { placeText } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Conflict } from "#tables/conflicts.js";
import { idsOf } from "#tables/statements.js";
import type { Saying } from "./sayings.js";
import type { SettledCare } from "./settle-care.js";

/** Pairs of statements an owner cannot both follow, each told once for the two that say them, at the later of them. */
export function contradictions(sayings: readonly Saying[], conflicts: readonly Conflict[]): Problem[] {
  const found = conflicts.flatMap((conflict) => {
    const others = saidBy(sayings, conflict.other);
    return saidBy(sayings, conflict.one).flatMap((one) =>
      others.flatMap((other) => contradiction(one, other, conflict)),
    );
  });
  const key = ({ at, values }: Problem) => JSON.stringify([placeText(at), values]);
  return [...new Map(found.map((one) => [key(one), one])).values()];
}

type Said = { by: Saying; id: string };

/** Who says one of these ids, and the first that each says. */
const saidBy = (sayings: readonly Saying[], ids: readonly string[]): Said[] =>
  sayings.flatMap((by) => {
    const said = idsOf(by.says);
    const id = ids.find((one) => said.includes(one));
    return id === undefined ? [] : [{ by, id }];
  });

function contradiction(one: Said, other: Said, { where }: Conflict): Problem[] {
  if (where === "same site" && !mayBeSameSite(one.by.care, other.by.care)) return [];
  const [a, b] = [one.by.by, other.by.by];
  return [
    problem("care-contradicts", b.at, {
      one: readable(one.id),
      oneTopic: a.name,
      oneAt: placeText(a.at),
      other: readable(other.id),
      otherTopic: b.name,
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

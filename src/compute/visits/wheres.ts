import type { BodySite, Care } from "../facts.js";

/** The place on the body that the visits of each care are for; null for all where it is one place, and nobody could ask which. */
export function wheresOf(care: readonly Care[]): (BodySite | null)[] {
  const wheres = care.map(({ site, side }) => (site ? { site, side } : null));
  const named = new Set(wheres.flatMap((where) => (where ? `${where.side} ${where.site}` : [])));
  return wheres.map((where) => (named.size > 1 ? where : null));
}

import { lookUp, matchFor } from "./match.js";
import { source } from "./source.js";

/**
 * The language of a page. asked: what the owner reads best; tag: the one of the chain that is answered; used: the words it is
 * answered in. why: "asked", "nearest" (words of another country), or else what stands in for a language nobody has put into
 * words: "later" (another the owner reads), "staff" or "last".
 */
export type Choice = {
  asked: string;
  tag: string;
  used: string;
  why: "asked" | "nearest" | "later" | "staff" | "last";
};

/**
 * What a page is written in: the first language of the owner's that we have; else that of the clinic's staff, who can go
 * through it with them; else English. asked: the owner's languages in order, at least one.
 */
export function chooseLanguage(
  asked: readonly string[],
  staff: string,
  have: readonly string[],
  country?: string,
): Choice {
  const [first = staff] = asked;
  for (const [index, tag] of asked.entries()) {
    const used = matchFor(tag, have, country);
    if (used === null) continue;
    const near = lookUp(tag, have) === null ? "nearest" : "asked";
    return { asked: first, tag, used, why: index === 0 ? near : "later" };
  }
  const used = matchFor(staff, have, country);
  if (used !== null) return { asked: first, tag: staff, used, why: "staff" };
  return { asked: first, tag: source, used: matchFor(source, have, country) ?? source, why: "last" };
}

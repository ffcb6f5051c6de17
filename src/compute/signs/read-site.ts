import { nearest } from "#problems/near.js";
import { type Place, within } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { Site } from "#tables/sites.js";
import { named } from "./named.js";

/** Where on the body: a row of the sites, and which side of it. */
export type BodyPlace = { site: Site; side: "left" | "right" | null };

/**
 * Reads "left cheek", "cheek, right", "R ear", "left side of the rump" or "tail base".
 * Problems: "side-twice", "site-unknown", "side-missing", "side-not-for-site".
 */
export function readSite(text: string, sites: readonly Site[], at: Place): Outcome<BodyPlace> {
  const sidesSaid = [...text.matchAll(sides)];
  if (sidesSaid.length > 1) return { value: null, problems: [problem("side-twice", at, { given: text })] };
  const side = sideOf(sidesSaid[0]?.[0]);

  const name = text.replace(sides, " ").replaceAll(",", " ").trim();
  const site = named(name, sites) ?? named(name.replace(sideWords, ""), sites);
  if (!site) {
    const known = sites.map(({ id }) => id.replaceAll("-", " "));
    const written = [...known, ...sites.flatMap(({ aliases }) => aliases.map((alias) => alias.replaceAll("-", " ")))];
    const words = within(at, Math.max(0, text.indexOf(name)), name.length);
    return {
      value: null,
      problems: [problem("site-unknown", words, { given: name, near: nearest(name, written), known })],
    };
  }
  if (side && site.sides === "none")
    return { value: null, problems: [problem("side-not-for-site", at, { site: name })] };
  const missing = !side && site.sides === "needed" ? [problem("side-missing", at, { site: name })] : [];
  return { value: { site, side }, problems: missing };
}

const sides = /(?<!\p{L})(?:left|right|l|r)(?!\p{L})\.?/giu;

/** What stands beside left or right, and is no place: "rump, left side", "right side of the rump". "Side" alone is the flank. */
const sideWords = /^side of (?:the )?|\s+side$/iu;

const sideOf = (word = ""): BodyPlace["side"] => {
  if (word === "") return null;
  return word.toLowerCase().startsWith("l") ? "left" : "right";
};

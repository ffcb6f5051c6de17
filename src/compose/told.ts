import type { Told } from "#compute/facts.js";
import type { Inline } from "#handout/handout.js";
import { isolated } from "#locale/isolate.js";
import { matchLanguage } from "#locale/match.js";
import { problem } from "#problems/problem.js";
import type { Page } from "./page.js";

/**
 * Free text in a language the owner reads, or else the page's, if somebody wrote it so. If not, in the staff's, and the
 * clinician is told. Words in another language than the page's are marked with it. owner: the fact the text stands in.
 */
export function toldOn(page: Page, told: Told, owner: unknown): Inline[] {
  const { language } = page.voice;
  const written = Object.keys(told);
  const own = ownOf(page, told);
  const found = own ?? matchLanguage(page.view.clinic.staffLanguage, written) ?? written[0] ?? language;
  if (!own) {
    const [asked = language] = page.wanted;
    const text = shortened(told[found] ?? "");
    page.report(problem("reason-not-translated", page.origins.place(owner), { language: asked, text }));
  }
  const words = page.voice.mark(own ? "own-words" : "not-translated", told[found] ?? "");
  return wordsIn(found, isolated(words, page.voice.direction), language);
}

/** Whether somebody wrote it in a language that the owner reads, or in the page's. */
export const isToldOn = (page: Page, told: Told): boolean => ownOf(page, told) !== undefined;

const ownOf = (page: Page, told: Told): string | undefined =>
  [...page.wanted, page.voice.language].flatMap((one) => matchLanguage(one, Object.keys(told)) ?? [])[0];

const longest = 60;

/** As much of a text as tells a reader which one it is. */
function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= longest ? text : `${letters.slice(0, longest).join("").trimEnd()}…`;
}

/** Words in their own language, marked where it is not the page's. */
function wordsIn(language: string, words: string, page: string): Inline[] {
  const text: Inline = { kind: "text", text: words };
  return matchLanguage(language, [page]) ? [text] : [{ kind: "passage", language, inlines: [text] }];
}

import type { Told } from "#compute/facts.js";
import type { Inline } from "#handout/handout.js";
import { matchLanguage } from "#locale/match.js";
import { problem } from "#problems/problem.js";
import type { Page } from "./page.js";

/**
 * Free text in the owner's language if somebody wrote it so. If not, in the staff's, marked with its language, and the
 * clinician is told. owner: the fact the text stands in.
 */
export function toldOn(page: Page, told: Told, owner: unknown): Inline[] {
  const { language, asked } = page.voice;
  const written = Object.keys(told);
  const own = matchLanguage(asked, written) ?? matchLanguage(language, written);
  const found = own ?? matchLanguage(page.view.clinic.staffLanguage, written) ?? written[0] ?? language;
  if (!own) page.report(problem("reason-not-translated", page.origins.place(owner), { language: asked }));
  return wordsIn(found, told[found] ?? "", language);
}

/** Words in their own language, marked where it is not the page's. */
function wordsIn(language: string, words: string, page: string): Inline[] {
  const text: Inline = { kind: "text", text: words };
  return matchLanguage(language, [page]) ? [text] : [{ kind: "passage", language, inlines: [text] }];
}

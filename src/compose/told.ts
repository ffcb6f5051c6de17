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
  const [own] = [...page.wanted, language].flatMap((one) => matchLanguage(one, written) ?? []);
  const found = own ?? matchLanguage(page.view.clinic.staffLanguage, written) ?? written[0] ?? language;
  if (!own) {
    const [asked = language] = page.wanted;
    page.report(problem("reason-not-translated", page.origins.place(owner), { language: asked }));
  }
  const words = page.voice.mark(own ? "own-words" : "not-translated", told[found] ?? "");
  return wordsIn(found, isolated(words, page.voice.direction), language);
}

/** Words in their own language, marked where it is not the page's. */
function wordsIn(language: string, words: string, page: string): Inline[] {
  const text: Inline = { kind: "text", text: words };
  return matchLanguage(language, [page]) ? [text] : [{ kind: "passage", language, inlines: [text] }];
}

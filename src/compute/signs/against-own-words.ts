import type { Plan } from "#plan/plan.js";
import { placeText, within } from "#problems/place.js";
import { type Problem, problem } from "#problems/problem.js";
import type { OwnWords } from "#tables/own-words.js";
import { idsOf } from "#tables/statements.js";
import { type FreeText, freeTextOf } from "../free-text.js";
import { readable } from "./contradictions.js";
import type { Saying } from "./sayings.js";

/**
 * What the clinician writes in free text that an owner cannot follow beside a statement of ours: "Bathe him on day 5" with a
 * wound that must stay dry. A sentence that forbids a thing ("No baths") goes with ours.
 */
export const againstOwnWords = (plan: Plan, sayings: readonly Saying[], { denials, rows }: OwnWords): Problem[] =>
  freeTextOf(plan).flatMap((text) =>
    rows
      .filter(({ fields }) => !fields || fields.includes(text.field))
      .flatMap(({ words, against }) => {
        const given = firstSaid(text, words[text.language] ?? [], denials[text.language] ?? []);
        const saying = sayings.find(({ says }) => against.some((id) => idsOf(says).includes(id)));
        const id = saying && against.find((one) => idsOf(saying.says).includes(one));
        if (!given || !saying || !id) return [];
        // Words that are folded over several lines are told at their first.
        const where = text.at.length < text.text.length ? text.at : within(text.at, given.index, given.words.length);
        return [
          problem("words-contradict", where, {
            given: given.words,
            other: readable(id),
            topic: saying.care.topic.id,
            at: placeText(saying.from),
          }),
        ];
      }),
  );

/** The first of these words that a sentence says and does not forbid, and where. */
function firstSaid({ text }: FreeText, words: readonly string[], denials: readonly string[]) {
  if (words.length === 0) return null;
  for (const { 0: sentence, index } of text.matchAll(/[^.;:!?\n]+/gu)) {
    const found = wholeWords(words).exec(sentence);
    const rest = found && sentence.replace(found[0], " ");
    if (found && !(denials.length > 0 && wholeWords(denials).test(rest ?? "")))
      return { words: found[0], index: index + found.index };
  }
  return null;
}

const wholeWords = (words: readonly string[]) =>
  new RegExp(`(?<![\\p{L}\\p{N}])(${words.join("|")})(?![\\p{L}\\p{N}])`, "iu");

import type { Facts } from "#compute/facts.js";
import type { Handout } from "#handout/handout.js";
import { type Choice, chooseLanguage } from "#locale/choose.js";
import type { Locales } from "#locale/locales.js";
import type { ClinicReview } from "#locale/status/kinds.js";
import { stateOf } from "#locale/status/status.js";
import { speak, type Voice } from "#locale/voice.js";
import { MissingWords } from "#locale/words.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";
import { eventsOf } from "./events.js";
import { frameOf } from "./frame.js";
import { sectionsOn } from "./held.js";
import { labelsOn } from "./labels.js";
import { letterOf } from "./letter.js";
import { liveOn } from "./live.js";
import { messagesOn } from "./messages.js";
import { missingOn, newPage, type Page } from "./page.js";
import type { Document, Templates } from "./templates.js";
import { viewOf } from "./view.js";

/**
 * language: a tag, or several in the order the owner reads them. staffToo: the letter also says it in the language of the
 * clinic's staff. reviews: what the clinic itself has read.
 */
export type ComposeOptions = {
  language: string | readonly string[];
  document?: Document;
  staffToo?: boolean;
  templates: Templates;
  locales: Locales;
  reviews?: readonly ClinicReview[];
};

/**
 * Words the facts in one language. For one that nobody has put into words yet another stands in (chooseLanguage), and the page
 * and the problems say so. Words that are missing stop it: half a sentence is none. The estimate alone has no visits to put in a
 * calendar; a plan without an estimate has none: "estimate-missing".
 */
export function compose(facts: Facts, options: ComposeOptions): Outcome<Handout> {
  const choice = choiceOf(facts, options);
  return composeIn(speak(options.locales, choice.tag, facts.country), choice, facts, options);
}

export const choiceOf = (facts: Facts, { language, locales }: ComposeOptions): Choice =>
  chooseLanguage([language].flat(), facts.clinic.staffLanguage, locales.tags, facts.country);

/** The same in a voice that is at hand. */
export function composeIn(voice: Voice, choice: Choice, facts: Facts, options: ComposeOptions): Outcome<Handout> {
  const { language, document = "handout" } = options;
  const problems: Problem[] = [];
  const told = new Set<string>();
  const report = (found: Problem) => {
    const key = JSON.stringify(found);
    if (!told.has(key)) problems.push(found);
    told.add(key);
  };
  const page = newPage(viewOf(facts), voice, report, [language].flat());
  if (choice.why !== "asked") {
    const code = choice.why === "nearest" ? "language-nearest" : "language-not-ready";
    report(problem(code, page.plan, { asked: choice.asked, used: voice.language }));
  }

  if (document === "estimate" && !facts.estimate) report(problem("estimate-missing", page.plan, {}));

  const value = orMissing(page, () => handoutOn(page, choice, document, options));
  return { value: stops(problems) ? null : value, problems };
}

/** Null where words are missing that no sentence of a template stands for: that is reported. */
function orMissing<T>(page: Page, make: () => T): T | null {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof MissingWords)) throw error;
    page.report(missingOn(page, error));
    return null;
  }
}

function handoutOn(page: Page, choice: Choice, document: Document, options: ComposeOptions): Handout {
  const { staffToo = false, templates, locales, reviews = [] } = options;
  const { view, voice, report } = page;
  const english = speak(locales, "en", view.country).say;
  const state = stateOf(locales, voice.language, reviews);
  const sections = sectionsOn(page, templates, document);
  const whole =
    document === "handout"
      ? { events: eventsOf(page), live: liveOn(page), messages: messagesOn(page), labels: labelsOn(page, templates) }
      : { events: [] };
  const staff = speak(locales, view.clinic.staffLanguage, view.country);
  const staffPage = staffToo && staff.language !== voice.language ? newPage(page.view, staff, report) : null;
  const letter = letterOf(page, staffPage, templates);
  const unreviewed = state === "unreviewed";
  return { ...frameOf(page, choice, english, document, unreviewed), sections, ...whole, letter };
}

import {
  type ClinicReview,
  clinicReviewsFile,
  guardLanguage,
  type Language,
  languages,
  reviewLanguage,
} from "#index.js";
import { writeWhole } from "#io/write-whole.js";
import type { Problem } from "#problems/problem.js";
import { clinicHouse } from "./clinic-house.js";
import { clinicReviewsIn, noReviews } from "./clinic-reviews.js";
import { type Desk, openDesk } from "./desk.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import type { LanguagesOptions } from "./options.js";
import { report } from "./report.js";

/** Lists the languages, or records a review and then lists them. */
export async function tellLanguages(options: LanguagesOptions, refuse: (message: string) => never): Promise<ExitCode> {
  const desk = await openDesk(options);
  const { clinic, review, by, today } = options;
  const before = await clinicReviewsIn(clinic);
  if (!before.value) return tellProblems(desk, before.problems);
  const own = await clinicHouse(desk.house, clinic);
  const { house } = own;
  if (!house) return tellProblems(desk, own.problems);
  let { reviews } = before.value;
  if (review || by !== undefined) {
    const [language, ...more] = review ?? [];
    if (language === undefined || more.length > 0 || !by?.trim())
      return refuse("error: say one language and who has read it: --review es --by NAME.");
    const found = languages(desk.house).find(({ tag }) => tag === language);
    if (!found) return refuse(`error: there are no words in the language '${language}'.`);
    reviews = reviewLanguage(house, reviews, { language, by: by.trim(), on: today });
    const { problems } = await writeWhole(clinic, [{ name: clinicReviewsFile, bytes: asBytes(reviews) }]);
    if (problems.length > 0) return tellProblems(desk, problems);
  }
  for (const language of languages(house, reviews)) tellLanguage(desk, language);
  return 0;
}

const asBytes = (reviews: ClinicReview[]): Uint8Array =>
  new TextEncoder().encode(`${JSON.stringify(reviews, null, 2)}\n`);

function tellLanguage(desk: Desk, language: Language): void {
  const { tag, name, state, sentences, complete, stale, reviewed } = language;
  const wrong = guardLanguage(desk.house, tag);
  tellProblems(desk, wrong);
  if (desk.json) {
    desk.terminal.out(JSON.stringify({ ...language, wrong: wrong.length }));
    return;
  }
  const far = `${complete}/${sentences} sentences, ${stale.length} stale, ${wrong.length} wrong`;
  const read = `read by: ${reviewed.fluent} fluent, ${reviewed.qualified} qualified, ${reviewed.clinic} clinic`;
  desk.terminal.out([tag, name, state, ...(state === "original" ? [] : [`${far}; ${read}`])].join("\t"));
}

function tellProblems(desk: Desk, problems: Problem[]): ExitCode {
  const plan = { value: null, problems };
  report(
    desk,
    {
      name: "languages",
      plan,
      earlier: [],
      past: [],
      texts: [],
      house: desk.house,
      language: "en",
      reviews: noReviews,
    },
    { open: problems, allowed: [], notes: [] },
  );
  return exitCodeOf(problems);
}

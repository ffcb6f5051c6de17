import { Command, Option } from "commander";
import { format } from "date-fns/format";
import { dayArgument, languageArgument } from "./arguments.js";
import type { ExitCode } from "./exit-code.js";
import type { LanguagesOptions } from "./options.js";

const manual = `
One line a language: its tag, its own name, its status, and how far it is.
  original    the words were first written in it
  reviewed    a qualified translator, or your clinic, has read all that owners read
  unreviewed  not so: a handout in such a language says so in both languages
Stale sentences were made from words that have changed since. What is wrong with a
translation is told on standard error, as hearthsheet check tells problems. With
--json each line is {tag, name, state, sentences, complete, stale, reviewed, wrong}.

Your own review: when somebody of your clinic who knows the language well has read
it all, say so. It is kept in language-reviews.json beside your clinic profile, and
holds for the words as they are now: sentences that change need a new reading.

Examples:
  hearthsheet languages
  hearthsheet languages --clinic ours --review es --by "Ana Reyes"`;

export const languagesCommand = (done: (code: ExitCode) => void): Command => {
  const command = new Command("languages")
    .description("List the languages a handout can be written in, or record your review of one.")
    .addOption(
      new Option("--review <tag>", "record that your clinic has read this language").argParser(languageArgument),
    )
    .addOption(new Option("--by <name>", "who has read it"))
    .addOption(new Option("--clinic <dir>", "the folder of your clinic profile").default("."))
    .addOption(
      new Option("--today <day>", "the day of the review, YYYY-MM-DD")
        .argParser(dayArgument)
        .default(format(new Date(), "yyyy-MM-dd"), "the day on this machine's clock"),
    )
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (options: LanguagesOptions) => {
      const { tellLanguages } = await import("./tell-languages.js");
      done(await tellLanguages(options, (message) => command.error(message)));
    });
  return command;
};

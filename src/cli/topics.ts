import { Command, Option } from "commander";
import type { ExitCode } from "./exit-code.js";

const manual = `
Without a name: one line a topic, what a plan calls it, which animals it is for, and
its name. With --json each line is {id, species, name}.

With a name: what the topic asks of a plan, and every sentence it puts before an owner,
as staff would read it. The site, the bandage and the animal add more to a real page.
With --json it is one line, {id, species, name, said, ...}.

With other words, in the language or in English: a line for each topic that all of them
find, as without a name, also in --json. The beginning of a word is enough.

Ends with 0, and with 2 where nothing is called so or found.

Examples:
  hearthsheet topics
  hearthsheet topics cut
  hearthsheet topics surgical-drain
  hearthsheet topics surgical-drain --language es --json`;

export const topicsCommand = (done: (code: ExitCode) => void): Command =>
  new Command("topics")
    .description("List the kinds of care a plan can name, or explain one.")
    .argument("[name...]", "a topic, as a plan calls it, or words to find one by")
    .addOption(new Option("-l, --language <tag>", "tell it in this language").default("en"))
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (words: string[], options: { language: string; json?: boolean }) => {
      const { tellTopic, tellTopics } = await import("./tell-topics.js");
      done(words.length === 0 ? await tellTopics(options) : await tellTopic(words.join(" "), options));
    });

import { Command, Option } from "commander";
import type { ExitCode } from "./exit-code.js";

const manual = `
Without a name: one line a topic, what a plan calls it, which animals it is for, and
its name. With --json each line is {id, species, name}.

With a name: what the topic asks of a plan, and every sentence it puts before an owner,
as staff would read it. The site, the bandage and the animal add more to a real page.

Examples:
  hearthsheet topics
  hearthsheet topics surgical-drain
  hearthsheet topics surgical-drain --language es --json`;

export const topicsCommand = (done: (code: ExitCode) => void): Command =>
  new Command("topics")
    .description("List the kinds of care a plan can name, or explain one.")
    .argument("[name]", "a topic, as a plan calls it")
    .addOption(new Option("-l, --language <tag>", "tell it in this language").default("en"))
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (name: string | undefined, options: { language: string; json?: boolean }) => {
      const { tellTopic, tellTopics } = await import("./tell-topics.js");
      done(name === undefined ? await tellTopics(options) : await tellTopic(name, options));
    });

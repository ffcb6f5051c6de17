import { Command, Option } from "commander";

const manual = `
One line a topic: what a plan calls it, which animals it is for, and its name. With
--json each line is {id, species, name}.`;

export const topicsCommand = (): Command =>
  new Command("topics")
    .description("List the kinds of care a plan can name.")
    .addOption(new Option("-l, --language <tag>", "name them in this language").default("en"))
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (options: { language: string; json?: boolean }) => {
      const { topics } = await import("#index.js");
      const { openDesk } = await import("./desk.js");
      const { house, terminal, json } = await openDesk(options);
      for (const topic of topics(house, options.language))
        terminal.out(json ? JSON.stringify(topic) : `${topic.id}\t${topic.species.join(", ")}\t${topic.name}`);
    });

import { Command } from "commander";

const manual = `
One line a language: its tag, its own name, and its status. Status is original,
reviewed (by a native speaker who knows the field) or unreviewed: a handout in such
a language says so. With --json each line is {tag, name, status}.`;

export const languagesCommand = (): Command =>
  new Command("languages")
    .description("List the languages a handout can be written in.")
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (options: { json?: boolean }) => {
      const { languages } = await import("#index.js");
      const { openDesk } = await import("./desk.js");
      const { house, terminal, json } = await openDesk(options);
      for (const language of languages(house))
        terminal.out(json ? JSON.stringify(language) : `${language.tag}\t${language.name}\t${language.status}`);
    });

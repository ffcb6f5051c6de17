import { Command, Option } from "commander";
import { dayArgument } from "./arguments.js";
import type { ExitCode } from "./exit-code.js";
import type { HistoryOptions } from "./options.js";

const manual = `
DIR is a case folder, kept by hearthsheet build --case DIR. Told is each paper that was
made, each visit that was entered and each e-mail that was sent, the oldest first. With
--on it tells what the owner had been given by the end of that day, and where these
very papers lie in the folder. It holds names: keep it as you keep the plan.

With --json each line is one line of the journal as it stands.

Exit status: 0 told. 1 the folder is not as it was written. 2 it cannot be used.

Examples:
  hearthsheet history cases/rex
  hearthsheet history cases/rex --on 2026-03-05`;

export const historyCommand = (done: (code: ExitCode) => void): Command =>
  new Command("history")
    .description("Tell what the owner was given, and when.")
    .argument("<dir>", "a case folder")
    .addOption(new Option("--on <day>", "what the owner had on this day, YYYY-MM-DD").argParser(dayArgument))
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (folder: string, options: HistoryOptions) => {
      const { tellHistory } = await import("./tell-history.js");
      done(await tellHistory(folder, options));
    });

import { Command } from "commander";
import type { ExitCode } from "./exit-code.js";

const manual = `
Tells what is set up here and what is missing: the clinic profile with its prices,
collars and holidays, the clinic's own templates and texts, each language and who has
read it, fonts, and whether there is a mail server. Of the mail server's address and password nothing is shown.

With --json it is one object:
  {version, node, clinic, usable, prices, collars, holidays, languages, fonts,
   overrides, smtp}

Examples:
  hearthsheet about
  hearthsheet about --clinic ours/clinic.yaml`;

export const aboutCommand = (done: (code: ExitCode) => void): Command =>
  new Command("about")
    .description("Tell what is set up and what is missing.")
    .option("--clinic <file>", "the clinic profile (default: clinic.yaml here or above)")
    .option("--json", "the answer as JSON")
    .addHelpText("after", manual)
    .action(async (options: { clinic?: string; json?: boolean }) => {
      const { tellAbout } = await import("./tell-about.js");
      done(await tellAbout(options));
    });

import { Command } from "commander";
import type { ExitCode } from "./exit-code.js";

const manual = `
DIR is a case folder, kept by hearthsheet build --case DIR. Each paper in it is built
again from the texts kept with it, and held against the one that was handed over, byte
for byte. Where they differ it names what is not the same now: the tool, a library,
templates, a locale, tables or fonts. It also tells a journal or a kept file that was
changed by hand, and whether the last plan, its clinic profile or its price list has
been edited where they lie.

Exit status: 0 all is as it was. 1 something is not. 2 the folder cannot be used.

Example:
  hearthsheet verify cases/rex`;

export const verifyCommand = (done: (code: ExitCode) => void): Command =>
  new Command("verify")
    .description("Build what was handed over again, and tell whether it is the same.")
    .argument("<dir>", "a case folder")
    .option("--json", "JSON Lines")
    .addHelpText("after", manual)
    .action(async (folder: string, options: { json?: boolean }) => {
      const { verifyCase } = await import("./verify-case.js");
      done(await verifyCase(folder, options));
    });

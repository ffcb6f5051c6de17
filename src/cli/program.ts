import { Command, CommanderError } from "commander";
import { version } from "#io/shipped.js";
import { aboutCommand } from "./about.js";
import { buildCommand } from "./build.js";
import { checkCommand } from "./check.js";
import { completionCommand } from "./completion.js";
import type { ExitCode } from "./exit-code.js";
import { historyCommand } from "./history.js";
import { languagesCommand } from "./languages.js";
import { newCommand } from "./new.js";
import { reviseCommand } from "./revise.js";
import { schemaCommand } from "./schema.js";
import { sendCommand } from "./send.js";
import { topicsCommand } from "./topics.js";
import { verifyCommand } from "./verify.js";

const manual = `
Exit status:
  0  done; nothing stops a plan
  1  a plan has problems that stop it, or that ask for a reason
  2  bad usage, or a file or folder that cannot be used

Environment:
  HEARTHSHEET_SMTP    the mail server of hearthsheet send
  NO_COLOR            if set, no colour on a terminal
  HEARTHSHEET_DEBUG   if set, show the stack of an unexpected error

Examples:
  hearthsheet check rex/plan.yaml
  hearthsheet build rex/plan.yaml --out out

hearthsheet help COMMAND tells more.`;

/** Runs one command line. Never throws for what a user typed; an error of the tool itself goes on to the caller. */
export async function run(argv: readonly string[]): Promise<ExitCode> {
  let code: ExitCode = 0;
  const done = (exit: ExitCode) => {
    code = exit;
  };
  const program = new Command("hearthsheet")
    .description("Turns a small-animal clinician's case plan into the paper an owner takes home.")
    .version(await version(), "-V, --version", "print the version")
    .helpCommand("help [command]", "tell about a command")
    .addHelpText("after", manual);
  for (const command of [
    newCommand(done),
    buildCommand(done),
    checkCommand(done),
    reviseCommand(done),
    sendCommand(done),
    topicsCommand(done),
    historyCommand(done),
    verifyCommand(done),
    languagesCommand(done),
    schemaCommand(),
    aboutCommand(done),
    completionCommand(() => program),
  ])
    program.addCommand(command);
  for (const command of withAllBelow(program))
    command.exitOverride().showHelpAfterError(`Try: hearthsheet ${pathOf(command)}--help`);
  try {
    await program.parseAsync(argv, { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    throw error;
  }
}

const withAllBelow = (command: Command): Command[] => [command, ...command.commands.flatMap(withAllBelow)];

/** "new clinic " below the tool's own name. */
const pathOf = (command: Command): string => (command.parent ? `${pathOf(command.parent)}${command.name()} ` : "");

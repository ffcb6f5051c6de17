import { Command } from "commander";
import { plansArgument } from "./arguments.js";
import type { ExitCode } from "./exit-code.js";
import { type CheckOptions, planOptions } from "./options.js";

const manual = `
A plan is a YAML or JSON file; - reads JSON Lines from standard input, one plan a
line, and tells its problems at -:LINE:COLUMN.

Each problem is told with its place, the line it is in, carets under the exact
words, and what to do about it. Problems go to standard error, and one line for
each plan, ready or not, to standard output. With --json both are JSON Lines:
  {plan, code, severity, file, line, column, length, values, what, hint, for, reason}
  {plan, ready, stop, ask, note, allowed}

With --reading the whole handout is measured in the owner's language by published
formulas, your own free text with it. Each hard sentence and word is a note.

Severity:
  stop   the plan cannot be built until this is corrected
  ask    it can, with a reason: --allow CODE="reason", or allow: in the plan. About a
         medicine, or where there are several, it must also say for what, just as it
         is printed: --allow "dose-over-limit:carprofen, 6 mg/kg=reason"
  note   worth a look

Examples:
  hearthsheet check rex/plan.yaml
  hearthsheet check */plan.yaml --json 2>problems.jsonl
  jq -c . rex/plan.json | hearthsheet check -`;

export const checkCommand = (done: (code: ExitCode) => void): Command => {
  const command = new Command("check")
    .description("Print the problems of plans, and build nothing.")
    .argument("<plan...>", "plan files, or - for standard input", plansArgument)
    .option("--reading", "also measure how easily the handout is read, and list what is hard")
    .addHelpText("after", manual)
    .action(async (plans: string[], options: CheckOptions) => {
      const { checkPlans } = await import("./check-plans.js");
      done(await checkPlans(plans, options));
    });
  for (const option of planOptions()) command.addOption(option);
  return command;
};

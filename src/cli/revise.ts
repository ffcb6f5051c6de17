import { Command } from "commander";
import type { ExitCode } from "./exit-code.js";
import { planOptions, type ReviseOptions } from "./options.js";

const manual = `
Enter what was seen, done and decided at a visit. The next revision of the plan is
written beside the old one, which is left as it is: plan.yaml, plan.r1.yaml, ...
Build the new one as any plan: its paper opens with what changed.

What to enter comes from a file (--from, YAML or JSON; - reads standard input), from
flags, or from both; a flag goes before the file. On a terminal with neither, it asks,
and for a reason where something does not fit. Reasons stay in the new plan, under allow.

Fields of the file: at, visit, seen: {discharge, tissue, smell, bandage, pain}, did,
reason, decided, every, course, booked, left, stop, medicines, collar until, weight,
charged, charged on, paid. Decided is one of:
  continue    as the course says     stretch    go on to the longer gap, or --every
  close       the wound was closed   drain out  the drain came out
  stop        no more visits, but those that were fixed

After a closure the plan tells of a closed wound in place of an open one, and of no
bandage. Say with it what follows: --course "sutures out day 10-14", --collar-until
"sutures out", and with --reason what the owner now reads of what was done.

What a visit came to is only what you say. Without it the paper tells what is charged
so far, and that the rest is not; say it later with --charged-on 2026-03-02=401.06.

Examples:
  hearthsheet revise rex/plan.yaml --at "2026-03-05 09:30" --visit change \\
      --discharge little --decided stretch --every 2-3 --charged 48.00 --paid 48.00
  hearthsheet revise rex/plan.yaml --at "2026-03-05 09:30" --visit change \\
      --decided continue --left "carprofen=3 tablets" --stop amoxicillin \\
      --medicine "gabapentin, capsule 100 mg, give 1 capsule, every 12 h, for 3 days"
  hearthsheet revise rex/plan.yaml --from visit.yaml`;

const several = (given: string, before: readonly string[] = []) => [...before, given];

export const reviseCommand = (done: (code: ExitCode) => void): Command => {
  const command = new Command("revise")
    .description("Record a visit and write the next revision of a plan.")
    .argument("<plan>", "the plan in force")
    .option("--from <file>", "what to enter, as YAML or JSON")
    .option("--at <time>", 'when the visit was: "2026-03-05 09:30"')
    .option("--visit <kind>", "what it was for: change, closure; repeatable", several)
    .option("--discharge <amount>", "none, little, moderate or much")
    .option("--tissue <colour>", "pink, red, pale, yellow, grey or black; repeatable", several)
    .option("--smell <smell>", "none, slight or bad")
    .option("--bandage <state>", "dry, damp, soaked, slipped, chewed or off")
    .option("--pain <pain>", "none, mild, moderate or severe")
    .option("--did <words>", "what was done; repeatable", several)
    .option("--reason <words>", "what the paper says was found and done, in place of what it said")
    .option("--decided <what>", "continue, stretch, close, drain out or stop")
    .option("--every <days>", "with stretch: the new gap, 2-3")
    .option("--course <line>", "the course from today on; repeatable", several)
    .option("--booked <time>", "a visit agreed now; repeatable", several)
    .option("--left <medicine=amount>", "what is in the house; repeatable", several)
    .option("--stop <medicine>", "stop it today; repeatable", several)
    .option("--medicine <line>", "one that begins or changes today, as new takes it; repeatable", several)
    .option("--collar-until <when>", "bandage off, recheck, a day, or off")
    .option("--weight <weight>", "24.6 kg")
    .option("--charged <money>", "what the visit came to, taxes in; without it, that is not yet known")
    .option("--charged-on <day=money>", "what a day before came to; repeatable", several)
    .option("--paid <money>", "what was paid")
    .option("--case <dir>", "note the visit in this case folder")
    .addHelpText("after", manual)
    .action(async (plan: string, options: ReviseOptions) => {
      const { revisePlan } = await import("./revise-plan.js");
      done(await revisePlan(plan, options));
    });
  for (const option of planOptions()) command.addOption(option);
  return command;
};

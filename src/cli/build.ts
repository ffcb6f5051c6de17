import { Command, Option } from "commander";
import { formats, formatsArgument, jobsArgument, languageArgument, plansArgument } from "./arguments.js";
import type { ExitCode } from "./exit-code.js";
import { type BuildOptions, planOptions } from "./options.js";

const manual = `
Files written:
  handout.pdf, handout.html, handout.txt   the handout, for paper, screen and e-mail
  first-page.pdf, .html, .txt              with --only first-page, one page: whom to
                                           ring, what comes next, when to go
  estimate.pdf, .html, .txt                these alone with --only estimate
  messages.txt                             the three things to know now, as short
                                           messages, only with --format sms
  labels.pdf                               a label for each medicine, 4 by 6 inches,
                                           only with --format labels
  rechecks.ics                             the visits, for the owner's calendar
  cancelled.ics                            those of an earlier paper that will not be
  handout.eml                              the e-mail to the owner, a draft, with the
                                           papers attached: --format eml, or with others
  proof.pdf, proof.html                    with --proof, for the clinic alone: what the
                                           owner reads beside the same in the language
                                           of your staff, with who has read it
  record.json                              what was handed over: the plan's hash, the
                                           problems and reasons, each file's SHA-256
A folder "overrides" beside the clinic profile holds templates and texts of the
clinic's own, by the names of ours: overrides/templates/handout/done.hbs. They are
checked with each plan, and listed in record.json.

One plan goes straight into DIR; of several, each goes into a folder of DIR named
after its own ("rex/plan.yaml" into DIR/rex), and a line of standard input into
DIR/line-N. With several languages each has its own folder below that ("es"), beside
the one record of them all.

A plan's files are written together or not at all, over those of before. Only you
can read them (mode 0600). The same plan and --today give the same bytes.

Problems go to standard error, as hearthsheet check tells them, and the path of each
file written to standard output. With --json both are JSON Lines; a result is:
  {plan, ready, stop, ask, note, allowed, written}

Many plans: --jobs builds several at once and tells of them in their order. A plan that
cannot be built stops no other. After a kill, --resume goes on where the run ended: what
was built with either is kept in DIR/.hearthsheet-batch.jsonl, by file name and hash.

With --case each build is kept for good: the plan and all it was made from, the files,
and a line in a journal that is only ever added to. hearthsheet history tells it,
hearthsheet verify builds it again. Of several plans each has a folder of its own.

Examples:
  hearthsheet build rex/plan.yaml --out out
  hearthsheet build */plan.yaml --out out --jobs 4 --resume
  hearthsheet build rex/plan.yaml --out out --case cases/rex
  hearthsheet build rex/plan.yaml --out out --language en --language es --paper a4
  hearthsheet build */plan.yaml --out out --format pdf
  hearthsheet build rex/plan.yaml --out out --only first-page
  hearthsheet build rex/plan.yaml --out out --only estimate
  hearthsheet build rex/plan.yaml --out out --watch --open
  hearthsheet build rex/plan.yaml --out out --language vi --proof
  hearthsheet build old/plan.yaml --out out --allow discharge-not-today="a reprint"`;

export const buildCommand = (done: (code: ExitCode) => void): Command => {
  const command = new Command("build")
    .description("Build the package of each plan: the papers an owner takes home.")
    .argument("<plan...>", "plan files, or - for JSON Lines on standard input", plansArgument)
    .requiredOption("-o, --out <dir>", "the folder the files go into; it is made if it is not there")
    .addOption(
      new Option("-l, --language <tag>", "write in this language; repeatable")
        .argParser(languageArgument)
        .default([], "the owner's"),
    )
    .addOption(
      new Option("-f, --format <list>", `some of ${formats.join(",")}`).argParser(formatsArgument).default(
        formats.filter((format) => format !== "sms" && format !== "eml" && format !== "labels"),
        "all but sms, eml and labels",
      ),
    )
    .addOption(new Option("--paper <size>", "the size of the page (default: the clinic's)").choices(["letter", "a4"]))
    .addOption(
      new Option("--only <part>", "build this part alone, as a page of its own").choices(["estimate", "first-page"]),
    )
    .option("--staff-language", "the e-mail says it in the staff's language too")
    .addOption(new Option("-j, --jobs <n>", "build so many plans at once").argParser(jobsArgument).default(1))
    .option("--resume", "leave out what an earlier run built from the same plan, profile and flags")
    .option("--watch", "build one plan again each time it is saved")
    .option("--open", "with --watch: show its page in a browser, on this machine alone")
    .option("--proof", "also a proof for your staff: the owner's words beside those of your language")
    .addOption(new Option("--case <dir>", "keep what was handed over in this folder, one a case"))
    .option("--large-print", "larger letters, for a reader who needs them")
    .addHelpText("after", manual)
    .action(async (plans: string[], options: BuildOptions) => {
      const refuse = (message: string) => command.error(message);
      if (options.open && !options.watch) refuse("error: --open goes with --watch.");
      if (options.watch) {
        const [plan = "-", ...more] = plans;
        if (plan === "-" || more.length > 0) refuse("error: --watch takes one plan, in a file.");
        const { watchPlan } = await import("./watch-plan.js");
        done(await watchPlan(plan, options, refuse));
        return;
      }
      const { buildPlans } = await import("./build-plans.js");
      done(await buildPlans(plans, options, refuse));
    });
  for (const option of planOptions()) command.addOption(option);
  return command;
};

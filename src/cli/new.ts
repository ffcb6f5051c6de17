import { Command, Option } from "commander";
import { dayArgument } from "./arguments.js";
import type { ExitCode } from "./exit-code.js";
import { newClinicCommand } from "./new-clinic.js";
import { allowOption, type NewOptions } from "./options.js";

const manual = `
Asks at most twelve short questions and writes a plan that builds: YAML with comments,
yours to change. After each answer it shows what follows from it: days, doses, money.
What a flag says is not asked. Where there is no terminal it asks nothing, takes what
is usual for the rest, and tells which flags are missing.

What is usual comes from the clinic profile, from your earlier answers, and from the
kind of care. No dose is usual: without one the plan has a place for it, and you fill
it in. Your choices of care are kept for the next time in choices.json, in
~/.local/state/hearthsheet; they name no owner, no animal and no medicine.

The profile is clinic.yaml in the plan's folder or above it, or --clinic. Beside it,
once, goes plan.schema.json, from which editors complete and check plans.
No file is ever written over.

Esc goes back a question. Ctrl+C ends, and nothing is written. What needs your reason is
asked about at the end, or take --allow.

A medicine is a line as you would prescribe it, or with the fields of a plan:
  carprofen … mg tablet, … mg/kg q…h for … days with food, last given 9 am
  carprofen, tablet … mg, dose … mg/kg, every … h, for … days,
  last given 09:00, food with, why For pain and swelling
Where a tablet may be cut, add: splits halves
A course is what comes, and when, counted from the day it is handed out:
  change every day for 3-5 days, first tomorrow
  recheck day 10-12
A collar is the neck, then from the collar line to the tip of the nose: 41 cm, 20 cm.
Add a kind, or until when, which is needed where the kind of care does not show it:
  soft cone, 22 cm, 10 cm, until sutures out
Until a day: until 2026-03-16

Examples:
  hearthsheet new
  hearthsheet new rex/plan.yaml --clinic ours/clinic.yaml
  hearthsheet new rex.yaml --name Rex --species dog --sex male --weight "31 kg" \\
      --owner "Ama Okafor" --language en --topic sutured-wound \\
      --site "left thigh" --reason "A cut on the thigh. We closed it."
  hearthsheet new clinic`;

const several = (given: string, before: readonly string[] = []) => [...before, given];

export const newCommand = (done: (code: ExitCode) => void): Command =>
  new Command("new")
    .description("Ask a few questions and write a plan that builds.")
    .argument("[file]", "the plan to write (default: named after the patient)")
    .option("--clinic <file>", "the clinic profile")
    .addOption(new Option("--species <species>", "dog or cat").choices(["dog", "cat"]))
    .option("--sex <sex>", 'female, male, "spayed female" or "neutered male"')
    .option("--name <name>", "the patient's name")
    .option("--weight <weight>", '"24.6 kg" or "54 lb"')
    .option("--owner <name>", "the owner's name")
    .option("--language <tag>", "the language the owner reads; hearthsheet languages lists those there are")
    .option("--email <address>", "the owner's e-mail")
    .option("--topic <topic>", "what is cared for; hearthsheet topics lists them")
    .option("--site <where>", 'where on the body: "left cheek"')
    .option("--bandage <bandage>", "tie-over, body-wrap, limb-wrap or head-wrap")
    .option("--reason <words>", "what was found and done, in the owner's words")
    .option("--course <line>", "a run of visits: recheck day 10-12; repeatable", several)
    .option("--medicine <line>", "a medicine; repeatable", several)
    .option("--collar <line>", "the measures of a collar")
    .option("--item <item>", "an item of the estimate; repeatable", several)
    .option("--paid <money>", "what was paid so far: 150.00")
    .option("--clinician <name>", "who signs")
    .option("--discharged <time>", 'when it is handed out: "2026-03-04 16:30" (default: now)')
    .addOption(allowOption())
    .addOption(
      new Option("--today <day>", "as on this day, YYYY-MM-DD (default: the day at the clinic)").argParser(dayArgument),
    )
    .option("--json", "the result as JSON")
    .addHelpText("after", manual)
    .addCommand(newClinicCommand(done))
    .action(async (file: string | undefined, options: NewOptions) => {
      const { newPlan } = await import("./new-plan.js");
      done(await newPlan(file, options));
    });

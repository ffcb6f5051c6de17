import { Command } from "commander";
import type { ExitCode } from "./exit-code.js";
import type { NewClinicOptions } from "./options.js";

const manual = `
Asks a dozen short questions and writes the profile that every plan uses: name, phones,
whom to ring at night, hours. Prices and collars in stock stand in it as comments,
yours to fill in. Beside it goes clinic.schema.json, for your editor.
The country says the money, the paper, the public holidays where they are known, the
time zone if it has one alone, and how phones are dialled. Esc goes back a question.
Where there is no terminal, flags say it all. No file is ever written over.

Examples:
  hearthsheet new clinic
  hearthsheet new clinic ours/clinic.yaml
  hearthsheet new clinic --name "Juniper Row" --address "18 Juniper Row" \\
      --phone "+1 312 555 0142" --after-name "Lakeside Emergency" \\
      --after-address "400 Harbor Street" --after-phone "+1 312 555 0187" \\
      --zone America/Chicago --weekdays 08:00-18:00 --saturday 09:00-13:00`;

const several = (given: string, before: readonly string[] = []) => [...before, given];

export const newClinicCommand = (done: (code: ExitCode) => void): Command =>
  new Command("clinic")
    .description("Ask for a clinic profile and write it.")
    .argument("[file]", "the profile to write", "clinic.yaml")
    .option("--name <name>", "name of the clinic")
    .option("--address <line>", "a line of its address; repeatable", several)
    .option("--phone <number>", "with + and the country code, or as it is dialled in --country")
    .option("--email <address>", "whom e-mails to owners come from")
    .option("--after-name <name>", "who is open when you are closed")
    .option("--after-address <line>", "a line of their address; repeatable", several)
    .option("--after-phone <number>", "their phone")
    .option("--country <code>", "two letters, US (default: as the phone has it)")
    .option("--zone <zone>", "time zone, America/Chicago (default: the country's only one, or this machine's)")
    .option("--currency <code>", "three letters, USD (default: the country's)")
    .option("--language <tag>", "the language the staff write in (default: this machine's, as spoken there)")
    .option("--weekdays <hours>", "Monday to Friday: 08:00-18:00, or 8am-6pm")
    .option("--saturday <hours>", "09:00-13:00 (default: closed)")
    .option("--sunday <hours>", "(default: closed)")
    .option("--json", "the result as JSON")
    .addHelpText("after", manual)
    .action(async (file: string, _options: unknown, command: Command) => {
      const { newClinic } = await import("./new-clinic-file.js");
      // A flag before the word "clinic" is the plan's by name, and meant for the profile.
      done(await newClinic(file, command.optsWithGlobals<NewClinicOptions>()));
    });

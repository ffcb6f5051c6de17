import { Command } from "commander";

const manual = `
Give the schema to your editor, and it completes and checks a plan while you write.
hearthsheet new puts it beside the clinic profile and names it in each first line.

Examples:
  hearthsheet schema > plan.schema.json
  hearthsheet schema --clinic > clinic.schema.json
  # yaml-language-server: $schema=plan.schema.json     (first line of a plan)`;

export const schemaCommand = (): Command =>
  new Command("schema")
    .description("Print the JSON Schema of a plan, or of a clinic profile.")
    .option("--clinic", "the clinic profile's")
    .addHelpText("after", manual)
    .action(async ({ clinic }: { clinic?: boolean }) => {
      const { clinicJsonSchema, planJsonSchema } = await import("#index.js");
      process.stdout.write(`${JSON.stringify(clinic ? clinicJsonSchema() : planJsonSchema(), null, 2)}\n`);
    });

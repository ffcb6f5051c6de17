import { Command } from "commander";

const manual = `
Give the schema to your editor, and it completes and checks a plan while you write:
  hearthsheet schema > plan.schema.json
  # yaml-language-server: $schema=plan.schema.json     (first line of a plan)`;

export const schemaCommand = (): Command =>
  new Command("schema")
    .description("Print the JSON Schema of a plan.")
    .addHelpText("after", manual)
    .action(async () => {
      const { planJsonSchema } = await import("#index.js");
      process.stdout.write(`${JSON.stringify(planJsonSchema(), null, 2)}\n`);
    });

import { group, multiselect, select, text } from "@clack/prompts";
import { explain } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Desk } from "./desk.js";
import { deskLanguage } from "./say.js";

const choices = {
  discharge: ["none", "little", "moderate", "much"],
  smell: ["none", "slight", "bad"],
  bandage: ["dry", "damp", "soaked", "slipped", "chewed", "off"],
  pain: ["none", "mild", "moderate", "severe"],
  decided: ["continue", "stretch", "close", "drain out", "stop"],
};
const colours = ["pink", "red", "pale", "yellow", "grey", "black"];
const at = { file: "", line: 1, column: 1, length: 1 };

/** Where questions are asked and answered. */
export type Screen = { input: NodeJS.ReadStream; output: NodeJS.WriteStream };

/** Asks on the terminal what was seen, done and decided; where there is none, nothing was entered. */
export async function askVisit(
  { house }: Desk,
  { input, output }: Screen = { input: process.stdin, output: process.stderr },
): Promise<Record<string, unknown>> {
  if (!input.isTTY || !output.isTTY) return {};
  const ask = (field: string) => explain(problem("revise-ask", at, { context: field }), house, deskLanguage()).what;
  const line = (field: string) => () => text({ message: ask(field), input, output });
  const one = (field: keyof typeof choices) => () =>
    select({ message: ask(field), options: choices[field].map((value) => ({ value })), input, output });
  const many = () =>
    multiselect({
      message: ask("tissue"),
      options: colours.map((value) => ({ value })),
      required: false,
      input,
      output,
    });
  const answers = await group(
    {
      at: line("at"),
      visit: line("visit"),
      discharge: one("discharge"),
      tissue: many,
      smell: one("smell"),
      bandage: one("bandage"),
      pain: one("pain"),
      did: line("did"),
      decided: one("decided"),
      weight: line("weight"),
      charged: line("charged"),
      paid: line("paid"),
    },
    { onCancel: () => process.exit(2) },
  );
  const { discharge, tissue, smell, bandage, pain, ...rest } = answers;
  const listed = (words: unknown) =>
    String(words ?? "")
      .split(",")
      .map((word) => word.trim())
      .filter(Boolean);
  const fields = {
    ...rest,
    visit: listed(rest.visit),
    did: listed(rest.did),
    seen: { discharge, tissue, smell, bandage, pain },
  };
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined && value !== ""));
}

import { readFileSync } from "node:fs";
import { readPlan } from "#plan/read-plan.js";

export const bytes = (text: string) => new TextEncoder().encode(text);

export const clinicText = readFileSync("examples/clinic.yaml", "utf8");
export const pricesText = readFileSync("examples/prices.yaml", "utf8");
export const dogText = readFileSync("examples/dog-cheek-abscess/plan.yaml", "utf8");

/** Reads a plan written in a test, with the examples' clinic. */
export const read = (text: string, clinic = clinicText, today = "2026-03-02") =>
  readPlan(
    {
      plan: { file: "plan.yaml", bytes: bytes(text) },
      clinic: { file: "clinic.yaml", bytes: bytes(clinic) },
      prices: { file: "prices.yaml", bytes: bytes(pricesText) },
    },
    { today },
  );

/** "code line:column [the words pointed at]", for each problem. */
export function seen(text: string, clinic = clinicText, today = "2026-03-02"): string[] {
  return read(text, clinic, today).problems.map(({ code, at }) => {
    const line = (at.file === "plan.yaml" ? text : clinic).split("\n")[at.line - 1] ?? "";
    const where = at.file === "plan.yaml" ? "" : `${at.file} `;
    return `${code} ${where}${at.line}:${at.column} [${line.slice(at.column - 1, at.column - 1 + at.length)}]`;
  });
}

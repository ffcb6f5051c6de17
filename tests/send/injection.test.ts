import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { simpleParser } from "mailparser";
import PostalMime from "postal-mime";
import { expect, it } from "vitest";
import { compose, compute, type Edit, editPlan, openHouse, readPlan, render } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";
import { readByPython } from "../email/help.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const text = (file: string) => readFileSync(home + file, "utf8");
const asSource = (file: string, content: string) => ({ file, bytes: new TextEncoder().encode(content) });
const house = openHouse(await shippedFiles()).value;

/** The e-mail of the dog's plan with one value of it, or of the clinic's profile, put in; null where it is refused. */
async function letterWith(where: "plan" | "clinic", path: Edit["path"], value: string): Promise<Uint8Array | null> {
  if (!house) throw new Error("what ships is broken");
  const edited = (file: string, is: "plan" | "clinic") =>
    asSource(file, is === where ? editPlan(text(file), [{ path, value }]) : text(file));
  const sources = {
    plan: edited("dog-cheek-abscess/plan.yaml", "plan"),
    clinic: edited("clinic.yaml", "clinic"),
    prices: asSource("prices.yaml", text("prices.yaml")),
  };
  const plan = readPlan(sources, { today: "2026-03-02" }).value;
  const facts = plan && compute(plan, house).value;
  const handout = facts && compose(facts, house, { language: "es", staffToo: true }).value;
  if (!handout) return null;
  const files = await render(handout, house, { paper: "letter", large: false, formats: ["eml"] });
  return files.value?.[0]?.bytes ?? null;
}

const victims = ["\r\nBcc: victim@example.org", "\nBcc: victim@example.org\n\nbody", "\u2028Bcc: victim@example.org"];
const fields: ["plan" | "clinic", Edit["path"]][] = [
  ["plan", ["patient", "name"]],
  ["plan", ["patient", "breed"]],
  ["plan", ["owner", "name"]],
  ["plan", ["owner", "email"]],
  ["plan", ["owner", "language"]],
  ["plan", ["case"]],
  ["plan", ["clinician"]],
  ["plan", ["reason"]],
  ["plan", ["care", 0, "site"]],
  ["plan", ["medicines", 0, "name"]],
  ["plan", ["medicines", 0, "why"]],
  ["clinic", ["name"]],
  ["clinic", ["email"]],
  ["clinic", ["address", 0]],
  ["clinic", ["phone"]],
  ["clinic", ["after hours", "name"]],
  ["clinic", ["estimate", "terms"]],
];

it.each(fields)("a header in %s %j is no header of the letter, or is refused", async (where, path) => {
  for (const victim of victims) {
    const bytes = await letterWith(where, path, `Rex${victim}`);
    if (path.at(-1) === "email") expect(bytes).toBeNull();
    if (!bytes) continue;
    const [python] = readByPython([bytes]);
    const postal = await PostalMime.parse(bytes);
    const parsed = await simpleParser(Buffer.from(bytes));
    expect(python?.to.map(([, address]) => address)).toEqual(["lucia.ferrer@example.org"]);
    expect([python?.headers.includes("bcc"), postal.bcc, parsed.bcc]).toEqual([false, undefined, undefined]);
    expect(python?.defects).toEqual([]);
  }
});

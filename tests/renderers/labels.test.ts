/** A label for each medicine, with all that the rules want on it, in whatever language it is. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compose, compute, readPlan, render } from "#index.js";
import { house, languages, whole } from "../examples/examples.js";
import { tool } from "../pdf/help.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const example = readFileSync("examples/dog-cheek-abscess/plan.yaml", "utf8");
const read = (text: string) =>
  readPlan(
    {
      plan: { file: "plan.yaml", bytes: bytes(text) },
      clinic: { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") },
      prices: { file: "prices.yaml", bytes: readFileSync("examples/prices.yaml") },
    },
    { today: "2026-03-02" },
  );
const written = example
  .replace("email: lucia.ferrer@example.org }", "email: lucia.ferrer@example.org, address: [1 Elm Row] }")
  .replace("    last given: 08:30\n", "    last given: 08:30\n    expires: 2027-05-31\n")
  .replace(
    "  - name: carprofen",
    "  - { name: x, drops: 0.3 %, route: left eye, give: 1 drop, every: 12 h, for: 5 days, last given: not given }\n  - name: carprofen",
  );

type Wanted = RegExp | Record<(typeof languages)[number], RegExp>;

async function labels(text: string, language: string) {
  const facts = whole(compute(whole(read(text)), house));
  const handout = whole(compose(facts, house, { language }));
  return whole(await render(handout, house, { paper: "letter", large: true, formats: ["labels"] }));
}

async function pagesOf(language: string): Promise<string[]> {
  const [file] = await labels(written, language);
  if (file?.name !== "labels.pdf") throw new Error(`no labels: ${file?.name}`);
  const { out } = tool("pdftotext", ["-layout", "FILE", "-"], file.bytes);
  return out.split("\f").map((page) => page.replace(/\s+/g, " ").trim());
}

describe.each(languages)("in %s", (language) => {
  test("each medicine has one to itself, of 4 by 6 inches", async () => {
    const [file] = await labels(written, language);
    const { out } = tool("pdfinfo", ["FILE"], file?.bytes ?? new Uint8Array());
    expect(out).toMatch(/Pages:\s+3\b/);
    expect(out).toMatch(/Page size:\s+288 x 432 pts/);
  });

  // 21 CFR 530.12 (a) to (d); 22 TAC 573.40; RCVS FAQ, items 1 to 10 and 12; Québec, M-8, r. 11, s. 1. All in published notes.
  test.each([
    ["supplier, address and telephone", /Juniper Row Animal Clinic/, /18 Juniper Row/, /555-0142/],
    ["prescriber", /Dr\. Noor Haddad/],
    ["owner and address", /Lucía Ferrer/, /1 Elm Row/],
    ["animal and species", /Bramble/, { en: /Dog/, es: /Perra/ }],
    ["day of supply", { en: /March 2, 2026/, es: /2 de marzo de 2026/ }],
    ["expiry", { en: /May 31, 2027/, es: /31 de mayo de 2027/ }],
    ["active ingredients and strength", /amoxicillin-clavulanate/i, /375 mg/],
    ["quantity", { en: /14 tablets/, es: /14 tabletas/ }],
    [
      "amount, route, frequency and duration",
      { en: /1 tablet by mouth 2 times each day/, es: /1 tableta por la boca 2 veces al día/ },
      { en: /March 9/, es: /9 de marzo/ },
    ],
    ["storage", { en: /in their foil/, es: /en su envoltura/ }],
    [
      "warnings",
      {
        en: /Keep out of reach of children\. For animal treatment only\./,
        es: /fuera del alcance de los niños\. Solo para animales\./,
      },
    ],
  ] satisfies [string, ...Wanted[]][])("%s", async (_, ...wanted) => {
    const [first = ""] = await pagesOf(language);
    for (const one of wanted as Wanted[]) expect(first).toMatch(one instanceof RegExp ? one : one[language]);
  });

  test("what the plan has only words for stands as it is written", async () => {
    const [, second = ""] = await pagesOf(language);
    expect(second).toContain("0.3 %");
  });
});

test("nothing goes home, nothing is printed", async () => {
  const without = example
    .replace(/medicines:[\s\S]*?collar: /, "collar: ")
    .replace(/ {4}- (amoxicillin|carprofen).*\n/g, "");
  expect(await labels(without, "en")).toEqual([]);
});

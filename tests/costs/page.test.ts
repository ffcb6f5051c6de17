import { readFileSync } from "node:fs";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { compose, compute, openHouse, readPlan, render } from "#index.js";
import { shippedFiles } from "#io/shipped.js";

const source = (file: string) => ({ file, bytes: new Uint8Array(readFileSync(file)) });
type Change = (text: string) => string;
const same: Change = (text) => text;
const changed = (file: string, change: Change) => ({
  file,
  bytes: new TextEncoder().encode(change(readFileSync(file, "utf8"))),
});
const plan = (clinic: Change = same, prices: Change = same) => {
  const read = readPlan(
    {
      plan: source("examples/dog-cheek-abscess/plan.yaml"),
      clinic: changed("examples/clinic.yaml", clinic),
      prices: changed("examples/prices.yaml", prices),
    },
    { today: "2026-03-02" },
  );
  if (!read.value) throw new Error(JSON.stringify(read.problems));
  return read.value;
};
const house = openHouse(await shippedFiles()).value;

/** The page of the example as plain text. */
async function page(language: string, document: "handout" | "estimate", clinic?: Change, prices?: Change) {
  const facts = house && compute(plan(clinic, prices), house).value;
  if (!house || !facts?.estimate) throw new Error("no facts");
  const { value, problems } = compose(facts, house, { language, document });
  if (!value) throw new Error(JSON.stringify(problems));
  const files = await render(value, house, { paper: "letter", large: false, formats: ["text", "ics"], document });
  const [file] = files.value ?? [];
  const text = new TextDecoder().decode(file?.bytes).replace(/\s+/gu, " ");
  return { estimate: facts.estimate, handout: value, problems, text, names: files.value?.map(({ name }) => name) };
}

/** Amounts as Intl writes them, and not as we do. */
const dollars = (minor: number, language: string) =>
  new Intl.NumberFormat(`${language}-US`, { style: "currency", currency: "USD" })
    .format(minor / 100)
    .replace(/\s+/gu, " ");

describe.each(["en", "es"])("the estimate in %s", (language) => {
  test.each(["handout", "estimate"] as const)("of the %s says what an estimate should", async (document) => {
    const { estimate, text } = await page(language, document);
    const { total, today, balance, paid, ringAbove } = estimate;
    const amounts = [total.low, total.likely, total.high, today.high, paid, balance.low, balance.high, ringAbove ?? 0];
    for (const amount of amounts) expect(text).toContain(dollars(amount, language));
    expect(text).not.toContain("{{");
    // AVMA PLIT and RCVS 9.1 (shared facts, section 5): range, what is left out, until when, that it may change, terms.
    const said = {
      en: ["Not in this estimate", "emergency hospital", "March 16", "may change", "Please pay", "Owner: "],
      es: ["No incluye", "hospital de urgencias", "16 de marzo", "puede cambiar", "Por favor, pague", "Responsable: "],
    }[language];
    for (const words of said ?? []) expect(text).toContain(words);
    expect(text).not.toMatch(/\bquot(e|ation)|presupuesto|cotización/iu);
  });

  test("in the handout tells each decision and each day of the figures in words", async () => {
    const { estimate, text } = await page(language, "handout");
    expect(estimate.branches.map(({ decision }) => decision)).toEqual([null, "closure"]);
    for (const { without, with: taken } of estimate.branches)
      for (const amount of [without.low, without.high, taken.low, taken.high])
        expect(text).toContain(dollars(amount, language));
    for (const { total } of [estimate.byDate[0], estimate.byDate.at(-1)].flatMap((one) => one ?? []))
      expect(text).toContain(dollars(total.high, language));
  });

  test("shows no picture and no second column where there is no range", async () => {
    const { handout } = await page(language, "estimate", undefined, (prices) =>
      prices.replace("240.00-320.00", "0").replace("65.00-90.00", "0").replace("price: 48.00", "price: 0"),
    );
    const kinds = handout.sections[0]?.blocks.map((block) => (block.kind === "table" ? block.head.length : block.kind));
    expect(kinds).toEqual([2, "paragraph", "paragraph", "paragraph", "signature"]);
  });

  test("says quote where the clinic does", async () => {
    const { text } = await page(language, "estimate", (clinic) =>
      clinic.replace("estimate:\n", "estimate:\n  called: quote\n"),
    );
    expect(text).toMatch(/We call this a quote|lo llamamos presupuesto/u);
    expect(text).not.toMatch(/may change|puede cambiar/u);
  });
});

test("a tax is named in the owner's language, and one that is not is told to the staff", async () => {
  const own = await page("es", "estimate");
  expect(own.text).toContain("Impuesto de ventas, 6.25 %");
  expect(own.problems.map(({ code }) => code)).not.toContain("reason-not-translated");
  const staffs = await page("es", "estimate", (clinic) =>
    clinic.replace("{ en: Sales tax, es: Impuesto de ventas }", "Sales tax"),
  );
  expect(staffs.text).toContain("Sales tax, 6.25 %");
  expect(staffs.problems.map(({ code, values }) => [code, values])).toContainEqual([
    "reason-not-translated",
    { language: "es", text: "Sales tax" },
  ]);
});

test("what the house has words for is told in the owner's language where the price list has none", async () => {
  const { text, problems } = await page("de", "estimate");
  for (const own of ["Verbandwechsel: 4 bis", "Halskragen", "Carprofen: 4 Tabletten"]) expect(text).toContain(own);
  expect(text).toContain("Abscess opened and flushed");
  const told = problems.flatMap((one) => (one.code === "reason-not-translated" ? [one.values.text] : []));
  expect(told).toContain("Abscess opened and flushed");
  expect(told).not.toContain("Bandage change");
});

test("the estimate alone is files of its own, without a calendar", async () => {
  const { names, handout } = await page("en", "estimate");
  expect(names).toEqual(["estimate.txt"]);
  expect(handout.sections.map(({ id }) => id)).toEqual(["estimate"]);
});

test("a plan without an estimate has none to print alone", () => {
  const facts = house && compute({ ...plan(), estimate: undefined }, house).value;
  const { value, problems } =
    house && facts ? compose(facts, house, { language: "en", document: "estimate" }) : never();
  expect(value).toBeNull();
  expect(problems.map(({ code }) => code)).toContain("estimate-missing");
});

function never(): never {
  throw new Error("no facts");
}

/** The issue's own page: "a page that staff can turn into a one-page estimate alone". */
test.each(
  ["dog-cheek-abscess", "cat-abscess-at-home"].flatMap((name) =>
    ["en", "es"].flatMap((language) => (["letter", "a4"] as const).map((paper) => [name, language, paper] as const)),
  ),
)("the estimate of %s in %s stands on one page of %s", async (name, language, paper) => {
  const read = readPlan(
    {
      plan: source(`examples/${name}/plan.yaml`),
      clinic: source("examples/clinic.yaml"),
      prices: source("examples/prices.yaml"),
    },
    { today: "2026-03-02" },
  );
  const facts = house && read.value && compute(read.value, house).value;
  const made = house && facts && compose(facts, house, { language, document: "estimate" }).value;
  if (!house || !made) return never();
  const drawn = await render(made, house, { paper, large: false, formats: ["pdf"], document: "estimate" });
  const pdf = await getDocument({ data: new Uint8Array(drawn.value?.[0]?.bytes ?? []), verbosity: 0 }).promise;
  expect(pdf.numPages).toBe(1);
});

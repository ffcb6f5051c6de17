/** A medicine by a name much like one the table knows is asked about; one known, or like none, is not. */
import { describe, expect, test } from "vitest";
import { misspelt } from "#compute/doses/misspelt.js";
import { settle } from "#problems/settle.js";
import { doses, q, table, type Written } from "./help.js";

const near = (name: string) => misspelt(name, table);

test.each([
  ["carprofin", "carprofen"],
  ["Caprofen 75", "carprofen"],
  ["carporfen", "carprofen"],
  ["rymadil", "rimadyl"],
  ["metcam", "metacam"],
  ["carprofène", "carprofen"],
  ["enrofloxacine", "enrofloxacin"],
  ["coamoxiclav", "co amoxiclav"],
  ["clava mox", "clavamox"],
  ["amoxicillin clavulanete", "amoxicillin clavulanate"],
  ["methyl prednisolone", "methylprednisolone"],
  ["tramadol with paracetmol", "paracetamol"],
])("%s may be %s", (written, meant) => expect(near(written)).toEqual([meant]));

test("no name of the table is a slip of another, nor with a strength or a salt beside it", () => {
  const names = table.flatMap((row) => row.names);
  expect(names.length).toBeGreaterThan(100);
  expect(names.filter((name) => near(name).length > 0)).toEqual([]);
  expect(names.filter((name) => near(`${name} hydrochloride 25 mg chewable`).length > 0)).toEqual([]);
});

// Medicines that exist and that the table does not hold, whose names end or begin as those of some it does.
test.each([
  ...["betamethasone", "ketorolac", "fenoprofen", "tenoxicam", "cypermethrin", "ronidazole", "penicillin V", "tylosin"],
  ...["pradofloxacin", "ciprofloxacin", "minocycline", "methimazole", "cefuroxime", "cefixime", "nortriptyline"],
  ...[
    "imipramine",
    "duloxetine",
    "paroxetine",
    "butorphanol",
    "sufentanil",
    "fludrocortisone",
    "sorbitol",
    "celecoxib",
  ],
  ...["omeprazole", "furosemide", "pimobendan", "phenobarbital", "artificial tears", "probiotic paste", "x"],
])("%s is a name of its own", (name) => expect(near(name)).toEqual([]));

test.each([
  ["predniolone", ["prednisolone", "prednisone"]],
  ["amicillin", ["ampicillin", "amoxicillin"]],
  ["amxicilina", ["amoxicilina", "ampicilina"]],
  ["meloxicm carprofin", ["carprofen", "meloxicam"]],
  ["carprofin meloxicm gabapentn tramadl prednisolon", ["carprofen", "gabapentin", "meloxicam"]],
])("%s: the nearest first, those as near by the alphabet, three at most", (name, names) =>
  expect(near(name)).toEqual(names),
);

describe("in a plan", () => {
  const written: Written = { name: "carprofin", tablet: q("100 mg"), dose: q("4.4 mg/kg"), every: "24 h" };
  const told = (medicine: Written, setting = {}) =>
    doses([medicine], setting)
      .problems.filter(({ code }) => code.startsWith("medicine-"))
      .map(({ code, severity, values }) => [code, severity, values]);

  test("it is asked about, and is no mere note besides", () => {
    expect(told(written)).toEqual([["medicine-misspelt", "ask", { medicine: "carprofin", near: ["carprofen"] }]]);
    expect(told({ ...written, name: "carprofen" })).toEqual([]);
    expect(told({ ...written, name: "moonflower" })).toEqual([["medicine-unknown", "note", { given: "moonflower" }]]);
  });

  test("beside it, a name the table does not know is told all the same", () => {
    const { problems } = doses([written, { ...written, name: "moonflower" }]);
    const told = problems.flatMap(({ code, values }) => (code === "medicine-unknown" ? values : []));
    expect(told).toEqual([{ given: "moonflower" }]);
  });

  test("a reason for it, by its name, lets it through", () => {
    const { problems } = doses([written]);
    const reason = { problem: "medicine-misspelt", for: "carprofin", reason: "a name of our own" };
    const open = (reasons: (typeof reason)[]) => settle(problems, reasons).open.map(({ code }) => code);
    expect(open([])).toContain("medicine-misspelt");
    expect(open([reason])).not.toContain("medicine-misspelt");
  });

  test("so is what the animal takes or is allergic to, or pairs and allergies would be lost", () => {
    const known = { ...written, name: "carprofen" };
    expect(told(known, { takes: ["prednisolon until 2026-02-27"], allergies: ["cefalexn", "chicken"] })).toEqual([
      ["medicine-misspelt", "ask", { medicine: "prednisolon until 2026-02-27", near: ["prednisolone"] }],
      ["medicine-misspelt", "ask", { medicine: "cefalexn", near: ["cefalexin"] }],
    ]);
  });
});

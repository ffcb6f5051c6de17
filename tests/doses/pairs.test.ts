/** What must not meet: who says so, and of which medicine it is told. Discharge is on 2026-03-02. */
import { describe, expect, test } from "vitest";
import { medicines, q, type Setting, told, type Written } from "./help.js";

const tablets = { tablet: q("100 mg"), give: q("1 tablet"), every: "24 h" };
const named = (name: string): Written => ({ name, ...tablets });
const taken = (name: string, ...takes: string[]): [Written, Setting] => [named(name), { takes }];

/** The source of a rule of the table that keeps a medicine from another, or from a group. */
const sourceOf = (id: string, other: string) =>
  medicines.rows.find((row) => row.id === id)?.notWith.find((rule) => rule.id === other)?.source ?? "no such rule";

describe("two medicines of a plan", () => {
  test("that are the same are told once, at the second", () => {
    expect(told("medicine-twice", [named("carprofen"), named("Carprofeno")])).toEqual([
      { at: "1/name", medicine: "Carprofeno" },
    ]);
    expect(told("never-together", [named("carprofen"), named("Carprofeno")])).toEqual([]);
    expect(told("medicine-twice", [named("gabapentin"), named("carprofen"), named("gabapentin")])).toEqual([
      { at: "2/name", medicine: "gabapentin" },
    ]);
  });

  test("that share one of what is in them are the same as far as that goes", () => {
    expect(told("medicine-twice", [named("tramadol with paracetamol"), named("tramadol")])).toEqual([
      { at: "1/name", medicine: "tramadol" },
    ]);
    const both = [named("carprofen with tramadol"), named("tramadol with prednisolone")];
    expect(told("medicine-twice", both)).toHaveLength(1);
    expect(told("never-together", both)).toMatchObject([{ source: sourceOf("carprofen", "corticosteroid") }]);
  });

  test("that the table does not hold are not the same", () => {
    expect(told("medicine-twice", [named("moonflower"), named("starflower")])).toEqual([]);
  });

  test("that must not meet are told at the later, whichever of them has the rule", () => {
    const source = sourceOf("carprofen", "corticosteroid");
    expect(source).toContain("corticosteroids");
    expect(told("never-together", [named("prednisolone"), named("carprofen")])).toEqual([
      { at: "1/name", medicine: "carprofen", other: "prednisolone", source },
    ]);
    expect(told("never-together", [named("carprofen"), named("prednisolone")])).toEqual([
      { at: "1/name", medicine: "prednisolone", other: "carprofen", source },
    ]);
  });
});

describe("what the animal takes already", () => {
  test("is told at the medicine, as the plan has it", () => {
    expect(told("never-together", ...taken("carprofen", "Prednisolona 5 mg"))).toEqual([
      {
        at: "0/name",
        medicine: "carprofen",
        other: "Prednisolona 5 mg",
        source: sourceOf("carprofen", "corticosteroid"),
      },
    ]);
  });

  test("is given twice over where it is the same, whether a rule keeps it from itself or not", () => {
    expect(told("medicine-twice", ...taken("carprofen", "carprofen 75 mg"))).toEqual([
      { at: "0/name", medicine: "carprofen" },
    ]);
    expect(told("medicine-twice", ...taken("gabapentin", "gabapentin 100 mg"))).toEqual([
      { at: "0/name", medicine: "gabapentin" },
    ]);
    expect(told("medicine-twice", ...taken("gabapentin", "gabapentin until 2026-02-27"))).toEqual([]);
    expect(told("medicine-twice", ...taken("moonflower", "starflower"))).toEqual([]);
  });
});

describe("what the animal took until a day", () => {
  // From 2026-02-24 to 2026-03-02 are six days, from 2026-02-23 seven.
  test.each(["until", "stopped", "ended"])("%s it is told with the days to wait and their source", (word) => {
    const text = `meloxicam ${word} 2026-02-24`;
    expect(told("too-soon-after", ...taken("carprofen", text))).toEqual([
      {
        at: "0/name",
        medicine: "carprofen",
        other: text,
        ended: { day: "2026-02-24" },
        days: 7,
        source: sourceOf("carprofen", "nsaid"),
      },
    ]);
    expect(told("too-soon-after", ...taken("carprofen", `meloxicam ${word} 2026-02-23`))).toEqual([]);
  });

  test("is taken still where that day is yet to come", () => {
    expect(told("never-together", ...taken("carprofen", "meloxicam until 2026-03-03"))).toHaveLength(1);
    expect(told("too-soon-after", ...taken("carprofen", "meloxicam until 2026-03-03"))).toEqual([]);
    expect(told("too-soon-after", ...taken("carprofen", "meloxicam until 2026-03-02"))).toHaveLength(1);
    expect(told("medicine-twice", ...taken("carprofen", "carprofen until 2026-03-03"))).toHaveLength(1);
    expect(told("medicine-twice", ...taken("tramadol", "tramadol with paracetamol"))).toHaveLength(1);
  });

  test("is taken still where no day is said, or where something follows it", () => {
    for (const text of ["meloxicam until today", "meloxicam until 2026-02-01 or later"])
      expect(told("never-together", ...taken("carprofen", text))).toHaveLength(1);
    expect(told("too-soon-after", ...taken("carprofen", " meloxicam until 2026-02-27 "))).toHaveLength(1);
  });

  // A nonsteroidal waits a week after another, 31 days after mavacoxib, which is one of them: the longer wait holds.
  test("waits for the longest of the rules that hold", () => {
    expect(told("too-soon-after", ...taken("carprofen", "mavacoxib until 2026-02-01"))).toMatchObject([
      { days: 31, source: sourceOf("carprofen", "mavacoxib") },
    ]);
  });

  test("and is kept apart only while it is taken needs no wait", () => {
    expect(told("never-together", ...taken("prednisolone", "dexamethasone"))).toHaveLength(1);
    expect(told("too-soon-after", ...taken("prednisolone", "dexamethasone until 2026-03-01"))).toEqual([]);
  });
});

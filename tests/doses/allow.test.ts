/** A reason given for one thing never answers for another. */
import { describe, expect, test } from "vitest";
import { allowArgument } from "#cli/arguments.js";
import { doseKinds } from "#problems/doses.js";
import { placeOf } from "#problems/place.js";
import { problem } from "#problems/problem.js";
import { type Reason, settle, subjectOf } from "#problems/settle.js";
import { doses, q, type Written } from "./help.js";

const carprofen: Written = {
  name: "carprofen",
  tablet: q("100 mg"),
  splits: "halves",
  dose: q("6 mg/kg"),
  every: "24 h",
  for: q("4 days"),
  "last given": "09:00",
};
const clav: Written = { name: "amoxicillin-clavulanate", tablet: q("375 mg"), splits: "halves", dose: q("25 mg/kg") };
const open = (medicines: Written[], ...reasons: Reason[]) =>
  settle(doses(medicines).problems, reasons).open.map((one) => subjectOf(one, [one]));
const over = (what?: string): Reason => ({ problem: "dose-over-limit", for: what, reason: "agreed with a specialist" });

describe("a reason for a dose over the limit", () => {
  test("says for which medicine and how much; the code alone answers nothing, even where there is one", () => {
    expect(open([carprofen])).toEqual(["carprofen, 6 mg/kg"]);
    expect(open([carprofen], over())).toEqual(["carprofen, 6 mg/kg"]);
    expect(open([carprofen], over("carprofen"))).toEqual(["carprofen, 6 mg/kg"]);
    expect(open([carprofen], over("Carprofen,  6 mg/kg"))).toEqual([]);
  });

  test("for one medicine lets no other through", () => {
    expect(open([carprofen, clav], over("carprofen, 6 mg/kg"))).toEqual(["amoxicillin-clavulanate, 25 mg/kg"]);
    const both = [over("carprofen, 6 mg/kg"), over("amoxicillin-clavulanate, 25 mg/kg")];
    expect(open([carprofen, clav], ...both)).toEqual([]);
  });

  test("does not stand for ten times as much", () => {
    expect(open([{ ...carprofen, dose: q("60 mg/kg") }], over("carprofen, 6 mg/kg"))).toContain("carprofen, 60 mg/kg");
  });

  test("for one step of a taper lets no other through", () => {
    const next = [{ dose: q("8 mg/kg"), every: "24 h", for: q("4 days") }];
    expect(open([{ ...carprofen, next }], over("carprofen, 6 mg/kg"))).toEqual(["carprofen, 8 mg/kg"]);
  });
});

test("every question about a medicine names the medicine", () => {
  for (const [code, { severity, names }] of Object.entries(doseKinds))
    if (severity === "ask") expect([code, names[0]]).toEqual([code, "medicine"]);
});

describe("a problem of another kind", () => {
  const at = (line: number) => ({ ...placeOf({}), line });
  const twice = (topic: string, line: number) => problem("topic-twice", at(line), { topic, first: "care 1" });
  const reason = { problem: "topic-twice", reason: "both are meant" };

  test("needs no more than its code where it stands alone, however often it is told", () => {
    expect(settle([twice("drain", 3), twice("drain", 9)], [reason]).open).toEqual([]);
  });

  test("is named by its values where several have its code", () => {
    const both = [twice("drain", 3), twice("burn", 9)];
    expect(settle(both, [reason]).open).toEqual(both);
    expect(settle(both, [{ ...reason, for: "burn, care 1" }]).open).toEqual([both[0]]);
  });

  test("is not answered by a reason for something else", () => {
    expect(settle([twice("drain", 3)], [{ ...reason, for: "burn, care 1" }]).open).toHaveLength(1);
  });

  test("that stops is not answered at all, nor is one by an empty reason", () => {
    const stop = problem("days-missing", at(1), { medicine: "carprofen" });
    expect(settle([stop], [{ problem: "days-missing", reason: "x" }]).open).toEqual([stop]);
    expect(settle([twice("drain", 3)], [{ ...reason, reason: " " }]).open).toHaveLength(1);
  });
});

test("on the command line it is CODE:FOR=reason", () => {
  expect(allowArgument("dose-over-limit:carprofen, 6 mg/kg=he said: 2 = 2")).toEqual([
    { problem: "dose-over-limit", for: "carprofen, 6 mg/kg", reason: "he said: 2 = 2" },
  ]);
  expect(allowArgument("topic-twice=a: b")).toEqual([{ problem: "topic-twice", for: undefined, reason: "a: b" }]);
});

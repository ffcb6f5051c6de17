/** The steps of a course and the rules that look at all of it: where each is told, and with what values. */
import { describe, expect, test } from "vitest";
import { codes, only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), "last given": "08:00" };
const clav: Written = { name: "amoxicillin-clavulanate", tablet: q("375 mg"), dose: q("13.75 mg/kg") };

describe("how often and for how long", () => {
  test("is told where it was written, in a later step too", () => {
    expect(told("every-unreadable", { ...tablets, every: "often" })).toEqual([{ at: "0/every", given: "often" }]);
    const next = [
      { give: q("1 tablet"), every: "24 h", for: q("2 days") },
      { give: q("1 tablet"), every: "now and then", for: q("2.5 days") },
    ];
    expect(told("every-unreadable", { ...tablets, next })).toEqual([{ at: "0/next/1/every", given: "now and then" }]);
    expect(told("days-not-whole", { ...tablets, next })).toEqual([{ at: "0/next/1/for", medicine: "x", days: "2.5" }]);
  });

  test("is asked for at the medicine where it is not said", () => {
    expect(told("days-missing", { ...tablets, for: undefined })).toEqual([{ at: "0", medicine: "x" }]);
    expect(told("days-not-whole", { ...tablets, for: undefined })).toEqual([]);
  });

  // Two weeks are 14 days, and twelve-hourly 28 doses; half a week is three days and a half.
  test("may be said in weeks", () => {
    expect(only({ ...tablets, for: q("2 weeks") })).toMatchObject({ dispense: q("28 tablets"), steps: [{ days: 14 }] });
    expect(told("days-not-whole", { ...tablets, for: q("0.5 weeks") })).toEqual([
      { at: "0/for", medicine: "x", days: "3.5" },
    ]);
  });

  // On days 1, 4 and 7; and on days 1 and 4 of six.
  test("of every third day ends within its days", () => {
    expect(only({ ...tablets, every: "every 3 days", for: q("7 days") }).doses).toHaveLength(3);
    expect(only({ ...tablets, every: "every 3 days", for: q("6 days") }).doses).toHaveLength(2);
  });

  test("a step that cannot be read leaves nothing of the course, and every problem is told", () => {
    const next = [{ every: "often", for: q("2.5 days") }];
    const all = codes([{ ...tablets, every: "seldom", for: undefined, next }]);
    expect(all.filter((code) => /every|days|dose/.test(code))).toEqual([
      "every-unreadable",
      "days-missing",
      "dose-missing",
      "every-unreadable",
      "days-not-whole",
    ]);
  });
});

describe("what follows from a step that cannot be read is not told", () => {
  const unread = ["medicine-unknown", "label-lacks"];

  test("of its days, or of how often", () => {
    expect(codes([{ ...tablets, for: q("2.5 days") }])).toEqual([...unread, "days-not-whole"]);
    const next = [{ give: q("1 tablet"), every: "often", for: q("3 days") }];
    expect(codes([{ ...tablets, for: q("3 days"), next }])).toEqual([...unread, "every-unreadable"]);
  });

  test("of how often at most, where it is given as needed", () => {
    const many: Written = { ...tablets, give: q("5 tablets"), "as needed": "sometimes" };
    expect(codes([many])).toEqual([...unread, "as-needed-unreadable"]);
  });
});

describe("as needed", () => {
  const needed: Written = { ...tablets, every: "8 h", "as needed": "at most 3 a day" };

  // Three times eight hours are a day.
  test("is no more a day than the hours between allow", () => {
    expect(told("as-needed-too-many", needed)).toEqual([]);
    expect(told("as-needed-too-many", { ...needed, "as needed": "at most 4 a day" })).toEqual([
      { at: "0/as needed", medicine: "x", most: 4, hours: 8 },
    ]);
  });

  // The label gives it every 12 hours.
  test("is never given too seldom", () => {
    const seldom: Written = { ...clav, every: "24 h" };
    expect(told("doses-too-seldom", seldom)).toMatchObject([{ at: "0/every", every: 24, limit: 12 }]);
    expect(told("doses-too-seldom", { ...seldom, "as needed": "at most 1 a day" })).toEqual([]);
  });

  test("is told where it cannot be read", () => {
    expect(told("as-needed-unreadable", { ...needed, "as needed": "sometimes" })).toEqual([
      { at: "0/as needed", given: "sometimes" },
    ]);
  });
});

describe("a rule for the days", () => {
  // 20 + 11 = 31 days, of which the label allows 30.
  test("counts the steps before, and is told at the step that goes past it", () => {
    const next = [{ dose: q("13.75 mg/kg"), every: "12 h", for: q("11 days") }];
    expect(told("days-over-limit", { ...clav, for: q("20 days"), next })).toMatchObject([
      { at: "0/next/0/for", medicine: "amoxicillin-clavulanate", days: 31, limit: 30 },
    ]);
    const less = [{ dose: q("13.75 mg/kg"), every: "12 h", for: q("10 days") }];
    expect(codes([{ ...clav, for: q("20 days"), next: less }])).not.toContain("days-over-limit");
  });

  test("is told alone; without one, more than thirty days are asked about, all steps together", () => {
    expect(codes([{ ...clav, for: q("31 days") }])).not.toContain("days-very-many");
    expect(told("days-very-many", { ...tablets, for: q("30 days") })).toEqual([]);
    const next = [{ give: q("1 tablet"), every: "24 h", for: q("11 days") }];
    expect(told("days-very-many", { ...tablets, for: q("20 days"), next })).toEqual([
      { at: "0/for", medicine: "x", days: 31, most: 30 },
    ]);
  });

  test("hides no other: a dose over its limit, for more than thirty days that no rule bounds", () => {
    const carprofen: Written = { name: "carprofen", tablet: q("100 mg"), splits: "halves", dose: q("6 mg/kg") };
    const all = codes([{ ...carprofen, every: "24 h", for: q("31 days") }]);
    expect(all).toEqual(expect.arrayContaining(["dose-over-limit", "days-very-many"]));
  });

  // 5 mg/lb x 54.23 lb = 271 mg, a capsule of 250 mg; the label gives it for five to seven days.
  test("that says how many it must be looks at the end of the course", () => {
    const amoxicillin: Written = { name: "amoxicillin", capsule: q("250 mg"), dose: q("5 mg/lb"), for: q("3 days") };
    const next = [{ dose: q("5 mg/lb"), every: "12 h", for: q("2 days") }];
    const short = (written: Written) => told("days-under-limit", written);
    expect(short({ ...amoxicillin, for: q("4 days") })).toMatchObject([{ at: "0/for", days: 4, limit: 5 }]);
    expect(short({ ...amoxicillin, next })).toEqual([]);
    const day = [{ dose: q("5 mg/lb"), every: "12 h", for: q("1 day") }];
    expect(short({ ...amoxicillin, next: day })).toMatchObject([{ at: "0/next/0/for", days: 4, limit: 5 }]);
  });

  // 0.25 mg/lb a day x 54.23 lb = 13.6 mg, three of 4.5 mg: a tablet of 5 mg. The label allows seven days of it.
  test("lets a taper go on at less a day, by smaller doses or by fewer", () => {
    const prednisolone: Written = {
      name: "prednisolone",
      tablet: q("5 mg"),
      splits: "halves",
      give: q("1 tablet"),
      every: "8 h",
    };
    const rules = (next: Written["next"] & object) =>
      codes([{ ...prednisolone, next }]).filter((code) => /limit|seldom/.test(code));
    expect(rules([{ give: q("1 tablet"), every: "8 h", for: q("4 days") }])).toEqual(["days-over-limit"]);
    expect(rules([{ give: q("0.5 tablets"), every: "8 h", for: q("4 days") }])).toEqual([]);
    expect(rules([{ give: q("1 tablet"), every: "24 h", for: q("4 days") }])).toEqual([]);
  });

  // Three doses in all: a dose at the clinic and two at home, or three at home.
  test("that counts the clinic's dose counts none that is not said", () => {
    const robenacoxib: Written = { name: "robenacoxib", tablet: q("6 mg"), give: q("1 tablet"), every: "24 h" };
    const three = { ...robenacoxib, for: q("3 days") };
    const cat = { species: "cat", weight: q("6 kg") } as const;
    expect(told("doses-over-limit", { ...three, "last given": "10:00" }, cat)).toMatchObject([
      { at: "0/for", medicine: "robenacoxib", doses: 4, limit: 3 },
    ]);
    expect(told("doses-over-limit", { ...three, "last given": undefined }, cat)).toEqual([]);
    expect(told("doses-over-limit", { ...three, "last given": "not given" }, cat)).toEqual([]);
  });
});

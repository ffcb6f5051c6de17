import { describe, expect, test } from "vitest";
import { codes, doses, only, q, type Setting, told, type Written } from "./help.js";

const cat: Setting = { species: "cat", weight: q("4.2 kg") };
const clav: Written = {
  name: "amoxicillin-clavulanate",
  tablet: q("375 mg"),
  splits: "halves",
  dose: q("13.75 mg/kg"),
};
const carprofen: Written = {
  name: "carprofen",
  tablet: q("100 mg"),
  splits: "halves",
  dose: q("4.4 mg/kg"),
  every: "24 h",
  for: q("4 days"),
  "last given": "09:00",
};
const values = (medicine: Written, code: string, setting: Setting = {}) =>
  doses([medicine], setting).problems.find((problem) => problem.code === code)?.values;

describe("what to give", () => {
  test("is refused where the strength cannot make it, by how little it would be", () => {
    expect(values({ ...clav, tablet: q("4800 mg") }, "strength-too-strong")).toEqual({
      medicine: "amoxicillin-clavulanate",
      amount: "0.0705",
      context: "tablet",
    });
  });

  test("goes to the nearest half, and a quarter in the middle goes down", () => {
    expect(only({ ...clav, name: "x", dose: q("75 mg"), tablet: q("100 mg") }).give.value).toBe("0.5");
    expect(only({ ...clav, name: "x", dose: q("76 mg"), tablet: q("100 mg") }).give.value).toBe("1");
  });

  test("is asked about from more than 15 % off", () => {
    const whole: Written = { name: "x", tablet: q("100 mg"), dose: q("115 mg") };
    expect(codes([whole])).not.toContain("rounding-too-far");
    expect(codes([{ ...whole, dose: q("87 mg") }])).not.toContain("rounding-too-far");
    expect(codes([{ ...whole, dose: q("86.9 mg") }])).toContain("rounding-too-far");
  });

  test("is measured with the syringe there is", () => {
    const liquid: Written = { name: "x", liquid: q("50 mg/mL"), dose: q("62 mg") };
    expect(only(liquid).give).toEqual({ value: "1.2", unit: "mL" });
    expect(only({ ...liquid, syringe: q("0.05 mL") }).give).toEqual({ value: "1.25", unit: "mL" });
  });

  test("of a capsule is whole, and of a tablet too where nothing is said", () => {
    expect(codes([{ name: "x", capsule: q("100 mg"), give: q("0.5 capsule") }])).toEqual([
      "medicine-unknown",
      "label-lacks",
      "give-not-measurable",
    ]);
    expect(codes([{ name: "x", tablet: q("100 mg"), give: q("0.5 tablet") }])).toContain("give-not-measurable");
  });

  test.each<[string, Written]>([
    ["form-missing", { name: "x", give: q("1 tablet") }],
    ["form-twice", { name: "x", tablet: q("1 mg"), liquid: q("1 mg/mL"), give: q("1 tablet") }],
    ["dose-missing", { name: "x", tablet: q("1 mg") }],
    ["strength-missing", { name: "x", drops: "0.3 %", dose: q("1 mg") }],
    ["strength-in-other-unit", { name: "x", liquid: q("40 IU/mL"), dose: q("1 mg/kg") }],
    ["give-in-other-unit", { name: "x", tablet: q("1 mg"), give: q("1 mL") }],
    ["every-unreadable", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), every: "120 h" }],
    ["days-missing", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), for: undefined }],
    ["days-not-whole", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), for: q("2.5 days") }],
    ["as-needed-unreadable", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), "as needed": "sometimes" }],
    ["dispensed-too-little", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), dispense: q("13 tablet") }],
    ["dispensed-in-other-unit", { name: "x", tablet: q("1 mg"), give: q("1 tablet"), dispense: q("20 mL") }],
  ])("%s stops", (code, medicine) => {
    const { value, problems } = doses([medicine]);
    expect(value).toBeNull();
    expect(problems.find((problem) => problem.code === code)?.severity).toBe("stop");
  });

  test("both the dose and what to give must agree", () => {
    expect(codes([{ ...clav, give: q("1 tablet") }])).toEqual([]);
    expect(codes([{ ...clav, give: q("1.5 tablet") }])).toContain("dose-and-give-differ");
  });

  test("many at once is asked about", () => {
    expect(codes([{ name: "x", tablet: q("5 mg"), dose: q("25 mg") }])).toContain("many-at-once");
    expect(codes([{ name: "x", liquid: q("5 mg/mL"), dose: q("125 mg") }])).toContain("many-at-once");
  });
});

describe("what goes home", () => {
  test("is whole tablets and millilitres, with what is left over", () => {
    const half = only({
      name: "x",
      tablet: q("100 mg"),
      splits: "halves",
      give: q("0.5 tablet"),
      for: q("5 days"),
      every: "24 h",
    });
    expect([half.dispense.value, half.leftOver.value]).toEqual(["3", "0.5"]);
    const liquid = only({ name: "x", liquid: q("50 mg/mL"), give: q("0.3 mL") });
    expect([liquid.dispense, liquid.leftOver.value]).toEqual([{ value: "5", unit: "mL" }, "0.8"]);
    const bottle = only({ name: "x", liquid: q("50 mg/mL"), give: q("0.3 mL"), dispense: q("15 mL") });
    expect([bottle.dispense.value, bottle.leftOver.value]).toEqual(["15", "10.8"]);
  });

  test("as needed is the most that may be given, and nothing stands on the chart", () => {
    const { value, problems } = doses([
      {
        name: "x",
        tablet: q("50 mg"),
        give: q("1 tablet"),
        every: "8 h",
        for: q("3 days"),
        "as needed": "at most 2 a day",
      },
    ]);
    expect(problems.map(({ code }) => code)).toEqual(["medicine-unknown", "label-lacks", "days-not-borne-out"]);
    expect(value?.chart).toBeNull();
    expect(value?.medicines[0]).toMatchObject({
      asNeededMost: 2,
      doses: [],
      first: null,
      dispense: { value: "6" },
      leftOver: { value: "0" },
    });
    expect(
      codes([{ name: "x", tablet: q("50 mg"), give: q("1 tablet"), every: "8 h", "as needed": "at most 4 a day" }]),
    ).toContain("as-needed-too-many");
  });

  test("drops and ointment go home in one container", () => {
    const drops = only({ name: "x", drops: "0.3 %", route: "eye", give: q("2 drops"), every: "6 h" });
    expect(drops).toMatchObject({ dispense: { value: "1", unit: "bottle" }, active: null });
  });
});

describe("a taper", () => {
  const taper: Written = {
    name: "x",
    tablet: q("5 mg"),
    splits: "halves",
    give: q("2 tablet"),
    every: "12 h",
    for: q("2 days"),
    "last given": "08:00",
    next: [
      { give: q("1 tablet"), every: "24 h", for: q("2 days") },
      { give: q("0.5 tablet"), every: "every other day", for: q("4 days") },
    ],
  };

  test("goes on when the step before would have", () => {
    expect(only(taper).doses.map(({ at, give }) => `${at.slice(5)} ${give.value}`)).toEqual([
      "03-02T20:00 2",
      "03-03T08:00 2",
      "03-03T20:00 2",
      "03-04T08:00 2",
      "03-04T20:00 1",
      "03-05T20:00 1",
      "03-06T20:00 0.5",
      "03-08T20:00 0.5",
    ]);
    expect(only(taper)).toMatchObject({ dispense: { value: "11" }, leftOver: { value: "0" } });
    expect(
      only(taper).steps.map(({ first, last, give, times }) => [first, last, give.value, times.map(({ at }) => at)]),
    ).toEqual([
      ["2026-03-02T20:00", "2026-03-04T08:00", "2", ["08:00", "20:00"]],
      ["2026-03-04T20:00", "2026-03-05T20:00", "1", ["20:00"]],
      ["2026-03-06T20:00", "2026-03-08T20:00", "0.5", ["20:00"]],
    ]);
  });

  test("after a loading dose keeps both of its published doses", () => {
    const meloxicam: Written = {
      name: "meloxicam",
      liquid: q("1.5 mg/mL"),
      syringe: q("0.1 mL"),
      dose: q("0.2 mg/kg"),
      every: "24 h",
      for: q("1 day"),
      "last given": "not given",
    };
    const next = [{ dose: q("0.1 mg/kg"), every: "24 h", for: q("4 days") }];
    expect(codes([{ ...meloxicam, next }])).toEqual(["labelled-for"]);
    expect(codes([{ ...meloxicam, for: q("5 days") }])).not.toEqual(["labelled-for"]);
  });
});

describe("limits", () => {
  test.each<[string, Written, Setting]>([
    ["dose-over-limit", { ...clav, dose: q("25 mg/kg") }, {}],
    ["dose-over-limit", { ...clav, dose: undefined, give: q("2 tablet") }, {}],
    ["dose-under-limit", { ...clav, dose: q("8 mg/kg") }, {}],
    ["doses-too-often", { ...clav, every: "8 h" }, {}],
    ["doses-too-seldom", { ...clav, every: "24 h" }, {}],
    ["days-over-limit", { ...clav, for: q("31 days") }, {}],
    ["days-very-many", { ...carprofen, for: q("31 days") }, {}],
    ["not-labelled", carprofen, cat],
    ["not-labelled", { name: "gabapentin", capsule: q("100 mg"), give: q("3 capsule"), every: "8 h" }, {}],
    ["dose-unusual", { name: "gabapentin", capsule: q("300 mg"), give: q("3 capsule"), every: "8 h" }, {}],
    [
      "weight-outside-limit",
      {
        name: "robenacoxib",
        tablet: q("6 mg"),
        splits: "halves",
        give: q("0.5 tablet"),
        every: "24 h",
        for: q("2 days"),
      },
      { ...cat, weight: q("2.4 kg") },
    ],
    [
      "age-outside-limit",
      { name: "oclacitinib", tablet: q("16 mg"), splits: "halves", dose: q("0.5 mg/kg") },
      { born: "2025-06" },
    ],
    [
      "age-unknown",
      { name: "oclacitinib", tablet: q("16 mg"), splits: "halves", dose: q("0.5 mg/kg") },
      { born: undefined },
    ],
    [
      "dose-over-limit",
      { name: "enrofloxacin", tablet: q("22.7 mg"), splits: "halves", give: q("1.5 tablet"), every: "24 h" },
      cat,
    ],
  ])("%s", (code, medicine, setting) => expect(codes([medicine], setting)).toContain(code));

  // 21 CFR 520.88g and h: 62.5 mg a cat, which is 14.53 mg/kg of one of 4.3 kg; 14 mg/kg is 60.2 mg, or one tablet of 62.5.
  test("an order just under the lowest dose is not asked about where it is rounded up to that dose", () => {
    const order = { name: clav.name, dose: q("14 mg/kg") };
    const kitten = { ...cat, weight: q("4.3 kg") };
    expect(codes([{ ...order, tablet: q("62.5 mg") }], kitten)).not.toContain("dose-under-limit");
    expect(codes([{ ...order, tablet: q("62.5 mg"), dose: q("12 mg/kg") }], kitten)).not.toEqual([]);
    expect(codes([{ ...order, liquid: { value: "12.5", unit: "mg/mL" } }], kitten)).toContain("dose-under-limit");
  });

  test("names the rule and its source", () => {
    expect(values({ ...carprofen, dose: q("44 mg/kg") }, "dose-over-limit")).toEqual({
      medicine: "carprofen",
      given: "44 mg/kg",
      limit: "2 mg/lb / 24 h (4.41 mg/kg)",
      context: "tenfold",
      source: "21 CFR 520.304(c)(1) (copies 2023-05 and 2026-06)",
    });
  });

  test("allows a dose as a label prints it in kilograms: 2 mg/lb is 4.4 mg/kg, 6.25 mg/lb is 13.75 mg/kg", () => {
    expect(codes([carprofen])).toEqual([]);
    expect(codes([{ ...carprofen, dose: q("4.47 mg/kg") }])).toContain("dose-over-limit");
  });

  test("hold per day, whole or split: a dog's enrofloxacin", () => {
    const twice: Written = {
      name: "enrofloxacin",
      tablet: q("68 mg"),
      splits: "halves",
      dose: q("2.75 mg/kg"),
      every: "12 h",
    };
    expect(codes([twice])).toEqual([]);
    expect(codes([{ ...twice, dose: q("11 mg/kg"), splits: "quarters" }])).toContain("dose-over-limit");
    expect(codes([{ ...twice, dose: q("8 mg/kg"), splits: "quarters" }])).toEqual([]);
  });

  test("carprofen is 2 mg/lb once or 1 mg/lb twice a day, not 2 mg/lb twice", () => {
    expect(codes([{ ...carprofen, dose: q("2.2 mg/kg"), every: "12 h" }])).toEqual([]);
    expect(codes([{ ...carprofen, every: "12 h" }])).not.toEqual([]);
  });

  test("where bands of weight meet, either holds: methylprednisolone at 15 lb", () => {
    const at15: Written = {
      name: "methylprednisolone",
      tablet: q("1 mg"),
      splits: "halves",
      every: "6 h",
      "last given": "not given",
      give: q("0.5 tablet"),
    };
    expect(codes([at15], { weight: q("15 lb") })).toEqual([]);
    expect(codes([at15], { weight: q("14 lb") })).toEqual([]);
    expect(codes([{ ...at15, give: q("1 tablet") }], { weight: q("15 lb") })).toEqual([]);
    expect(codes([{ ...at15, give: q("1 tablet") }], { weight: q("14 lb") })).toContain("dose-over-limit");
  });

  test("a dose at the clinic counts where the label counts it: three doses of robenacoxib in all", () => {
    const robenacoxib: Written = {
      name: "robenacoxib",
      tablet: q("6 mg"),
      give: q("1 tablet"),
      every: "24 h",
      "last given": "10:00",
      for: q("2 days"),
    };
    const setting: Setting = { ...cat, weight: q("6 kg"), discharged: "2026-03-02T16:30" };
    expect(codes([robenacoxib], setting)).toEqual([]);
    expect(codes([{ ...robenacoxib, for: q("3 days") }], setting)).toContain("doses-over-limit");
    expect(codes([{ ...robenacoxib, for: q("3 days"), "last given": "not given" }], setting)).toEqual([]);
  });

  test("a slip of the unit is told as one", () => {
    expect(
      values({ ...clav, dose: q("13.75 mg"), tablet: q("62.5 mg"), splits: "quarters" }, "dose-unit-doubtful"),
    ).toMatchObject({
      given: "13.75 mg",
      other: "13.75 mg/kg",
    });
    expect(values({ ...carprofen, dose: q("108 mg/kg"), tablet: q("100 mg") }, "dose-unit-doubtful")).toMatchObject({
      other: "108 mg",
    });
  });

  test("a medicine the table does not hold is said to be unchecked", () => {
    expect(codes([{ name: "moonflower", tablet: q("1 mg"), give: q("1 tablet") }])).toEqual([
      "medicine-unknown",
      "label-lacks",
    ]);
  });
});

describe("never", () => {
  test.each([
    ["paracetamol", "cat"],
    ["Acetaminophen 500 mg", "cat"],
    ["tramadol with paracetamol", "cat"],
    ["Permetrina spot-on", "cat"],
    ["ibuprofen", "dog"],
    ["ibuprofeno", "cat"],
    ["xylitol", "dog"],
  ] as const)("%s to a %s", (name, species) => {
    const { value, problems } = doses([{ name, tablet: q("1 mg"), give: q("1 tablet") }], { species });
    expect(value).toBeNull();
    expect(problems).toContainEqual(expect.objectContaining({ code: "never-for-species", severity: "stop" }));
  });

  test("a liquid that may hold xylitol is asked about for a dog", () => {
    const liquid: Written = { name: "gabapentin", liquid: q("50 mg/mL"), dose: q("10 mg/kg"), every: "8 h" };
    expect(codes([liquid])).toContain("may-hold-poison");
    expect(codes([liquid], cat)).not.toContain("may-hold-poison");
    expect(codes([{ ...liquid, liquid: undefined, capsule: q("100 mg") }])).not.toContain("may-hold-poison");
  });

  test("paracetamol to a dog is only extralabel", () => {
    expect(codes([{ name: "paracetamol", tablet: q("250 mg"), give: q("1 tablet") }])).toEqual(["not-labelled"]);
  });
});

describe("what must not meet", () => {
  const meloxicam: Written = {
    name: "meloxicam",
    liquid: q("1.5 mg/mL"),
    dose: q("0.1 mg/kg"),
    every: "24 h",
    "last given": "09:00",
  };
  const prednisolone: Written = { name: "prednisolone", tablet: q("5 mg"), give: q("1 tablet"), every: "8 h" };

  test("two of a kind, and a kind with another, are asked about once", () => {
    expect(codes([carprofen, meloxicam]).filter((code) => code === "never-together")).toHaveLength(1);
    expect(codes([prednisolone, carprofen])).toContain("never-together");
    expect(codes([carprofen, clav])).toEqual([]);
    expect(codes([carprofen, carprofen])).toContain("medicine-twice");
  });

  test("counts what the animal takes already, and took until a few days ago", () => {
    expect(codes([carprofen], { takes: ["Prednisolona 5 mg"] })).toEqual(["never-together"]);
    expect(codes([carprofen], { takes: ["carprofen"] })).toEqual(["medicine-twice"]);
    expect(codes([carprofen], { takes: ["meloxicam until 2026-02-25"] })).toEqual(["too-soon-after"]);
    expect(codes([carprofen], { takes: ["meloxicam until 2026-02-23"] })).toEqual([]);
    expect(codes([carprofen], { takes: ["levothyroxine"] })).toEqual([]);
  });

  // Carprofen goes home on 2026-03-02: data sheets of mavacoxib (a month) and enflicoxib (two weeks), 2015 AAHA/AAFP guidelines (aspirin, ten days).
  test.each([
    ["mavacoxib", "2026-01-31", "2026-01-30"],
    ["enflicoxib", "2026-02-17", "2026-02-16"],
    ["aspirin", "2026-02-21", "2026-02-20"],
  ])("waits for a %s that stays long", (other, tooLate, longAgo) => {
    expect(codes([carprofen], { takes: [`${other} until ${tooLate}`] })).toEqual(["too-soon-after"]);
    expect(codes([carprofen], { takes: [`${other} until ${longAgo}`] })).toEqual([]);
  });

  // Cote, Clinical Veterinary Advisor, 4th ed, p. 1281: fentanyl and amitraz are on its list; WikiVet: six weeks after fluoxetine.
  test("keeps medicines that raise serotonin apart", () => {
    const tramadol: Written = { ...carprofen, name: "tramadol", tablet: q("50 mg"), dose: q("4 mg/kg"), every: "8 h" };
    const of = (takes: string) => codes([tramadol], { takes: [takes] }).filter((code) => /never|soon/.test(code));
    expect(of("fentanyl")).toEqual(["never-together"]);
    expect(of("amitraz")).toEqual(["never-together"]);
    expect(of("fluoxetine until 2026-01-20")).toEqual(["too-soon-after"]);
    expect(of("fluoxetine until 2026-01-19")).toEqual([]);
  });
});

describe("allergies", () => {
  test.each(["amoxicillin", "Penicillin", "cephalexin", "penicilina (ronchas)", "amoxicillin-clavulanate"])(
    "to %s",
    (allergy) => {
      expect(codes([clav], { allergies: [allergy] })).toEqual(["allergy-known"]);
    },
  );

  test("to something else, or to a medicine the table does not hold", () => {
    expect(codes([clav], { allergies: ["chicken", "carprofen"] })).toEqual([]);
    expect(
      codes([{ name: "moonflower", tablet: q("1 mg"), give: q("1 tablet") }], { allergies: ["Moonflower"] }),
    ).toContain("allergy-known");
  });
});

describe("what is told at a medicine", () => {
  const written = (name: string, more: Partial<Written> = {}): Written => ({
    ...{ name, tablet: q("100 mg"), give: q("1 tablet"), every: "24 h" },
    ...more,
  });
  const source = expect.stringMatching(/./);

  test("names it, with the allergy, the animal, or what it may hold", () => {
    expect(told("allergy-known", written("amoxicillin"), { allergies: ["penicillins"] })).toEqual([
      { at: "0/name", medicine: "amoxicillin", allergy: "penicillins" },
    ]);
    expect(told("never-for-species", written("Paracetamol"), { species: "cat" })).toEqual([
      { at: "0/name", medicine: "Paracetamol", context: "cat", source },
    ]);
    const liquid = { tablet: undefined, liquid: q("50 mg/mL"), give: q("1 mL") };
    expect(told("may-hold-poison", written("gabapentin", liquid))).toEqual([
      { at: "0/name", medicine: "gabapentin", context: "xylitol", source },
    ]);
    expect(told("may-hold-poison", written("gabapentin", liquid), { species: "cat" })).toEqual([]);
  });

  test("names its days and the most that are usual, at its days", () => {
    expect(told("days-very-many", written("moonflower", { for: q("31 days") }))).toEqual([
      { at: "0/for", medicine: "moonflower", days: 31, most: 30 },
    ]);
  });
});

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { medicineLine } from "../../src/cli/entry/medicine-line.js";

const read = (line: string) => medicineLine(line);

describe("a medicine as it is prescribed", () => {
  it.each<[string, Record<string, string>]>([
    [
      "carprofen 100 mg tablet 4.4 mg/kg q24h for 4 days with food last given 9 am",
      {
        ...{ name: "carprofen", tablet: "100 mg", dose: "4.4 mg/kg", every: "q24h", for: "4 days" },
        ...{ food: "with", "last given": "09:00" },
      },
    ],
    [
      "amoxicillin-clavulanate 375mg tabs, 13.75mg/kg BID x 10 d PO, given at 8:30",
      {
        ...{ name: "amoxicillin-clavulanate", tablet: "375 mg", dose: "13.75 mg/kg", every: "BID", for: "10 days" },
        ...{ route: "mouth", "last given": "08:30" },
      },
    ],
    [
      "gabapentin 50 mg/ml suspension, 0.2 mL/kg every 8 h for 1 week, not given yet, with or without food",
      {
        ...{ name: "gabapentin", liquid: "50 mg/mL", dose: "0.2 mL/kg", every: "8 h", for: "1 week" },
        ...{ "last given": "not given", food: "either" },
      },
    ],
    ["prednisolone 5 mg tab half a tablet every other day", pred("0.5 tablet", "every other day")],
    ["prednisolone 5 mg tab 1 1/2 tabs every 3 days", pred("1.5 tablet", "every 3 days")],
    ["prednisolone 5 mg tab 2½ tablets sid", pred("2.5 tablet", "sid")],
    ["prednisolone 5 mg tab, give 1/4 tablet, every morning", pred("0.25 tablet", "every morning")],
    [
      "tobramycin drops, drops 0.3 %, into the left eye, 1 drop q8h",
      { name: "tobramycin drops", drops: "0.3 %", route: "left eye", give: "1 drop", every: "q8h" },
    ],
    [
      "insulin glargine, insulin 40 units/mL, give 2 units, twice daily",
      { name: "insulin glargine", insulin: "40 units/mL", give: "2 unit", every: "twice daily" },
    ],
    ["NPH insulin 100 units/mL, give 1 unit", { name: "NPH insulin", insulin: "100 units/mL", give: "1 unit" }],
    [
      "meloxicam 0.5mg/ml oral susp. 0.05mg/kg SID x 5d first dose 8am",
      {
        ...{ name: "meloxicam", liquid: "0.5 mg/mL", dose: "0.05 mg/kg", every: "SID", for: "5 days" },
        first: "08:00",
      },
    ],
    ["carprofen first tonight at 8pm", { name: "carprofen", first: "tonight 20:00" }],
    ["carprofen last given yesterday evening at 21:15", { name: "carprofen", "last given": "yesterday 21:15" }],
    ["carprofen x 5/7, splits in half", { name: "carprofen", splits: "halves", for: "5 days" }],
    ["carprofen 75 mg tab BID 7 days", { name: "carprofen", tablet: "75 mg", every: "BID", for: "7 days" }],
    ["carprofen for 2/52 sid", { name: "carprofen", every: "sid", for: "2 weeks" }],
    ["carprofen, once opened 28 days", { name: "carprofen", "once opened": "28 days" }],
    ["meloxicam syringe marked every 0.02ml", { name: "meloxicam", syringe: "0.02 mL" }],
    ["meloxicam, syringe 0.05 mL", { name: "meloxicam", syringe: "0.05 mL" }],
    ["NPH insulin, syringe U-100", { name: "NPH insulin", syringe: "U-100" }],
    ["carprofen 4,4 mg/kg", { name: "carprofen", dose: "4,4 mg/kg" }],
    ["carprofen, why For pain, and swelling 2 mg/kg", { name: "carprofen", why: "For pain" }],
  ])("%s", (line, fields) => expect(read(line).fields).toEqual(fields));

  function pred(give: string, every: string) {
    return { name: "prednisolone", tablet: "5 mg", give, every };
  }

  it("counts the day of a dose from the discharge", () => {
    const said = (line: string) => medicineLine(line, "2026-02-28 16:30").fields;
    expect(said("carprofen, first tonight 8pm")["first"]).toBe("2026-02-28 20:00");
    expect(said("carprofen first dose tomorrow morning at 7:30")["first"]).toBe("2026-03-01 07:30");
    expect(said("carprofen first 8am Tomorrow")["first"]).toBe("2026-03-01 08:00");
    expect(said("carprofen last given yesterday 8 pm, first 8am")).toEqual({
      ...{ name: "carprofen", "last given": "2026-02-27 20:00", first: "08:00" },
    });
  });

  it.each([
    ["a day said twice", "carprofen first tonight 8pm tomorrow", "8pm tomorrow"],
    ["how much goes home is no order", "carprofen 100 mg tablet 14 tablets", "14 tablets"],
    ["no tablet is cut in three", "pred 5 mg tab 2/3 tablet daily", "2/3"],
    ["a second dose", "carprofen 4.4 mg/kg 2.2 mg/kg", "2.2 mg/kg"],
    ["a dose for later", "carprofen 8 mg/kg then 4 mg/kg", "then"],
    ["one word among others", "carprofen 100 mg tablet chewable 4 mg/kg", "chewable"],
    ["a number alone", "carprofen 100", "100"],
    ["an eye in Latin", "tobramycin 1 drop q8h OD", "OD"],
    ["days without a word", "carprofen 75 mg tab, 4d", "4d"],
    ["a strength per tablet and per millilitre", "carprofen 75 mg tab 50 mg tab", "50 mg tab"],
    ["micrograms", "buprenorphine 20 mcg/kg", "20 mcg/kg"],
  ])("%s is not understood", (_, line, unknown) => expect(read(line).unknown).toBe(unknown));

  it("takes the name of any medicine whole, in every language, alone and before what follows", () => {
    const json = (path: string) => JSON.parse(readFileSync(new URL(`../../${path}`, import.meta.url), "utf8"));
    const ours: { names: string[] }[] = json("shared/medicines.json").medicines;
    const theirs = readdirSync(new URL("../../locales/", import.meta.url))
      .filter((tag) => existsSync(new URL(`../../locales/${tag}/medicines.json`, import.meta.url)))
      .flatMap((tag) => Object.values<string>(json(`locales/${tag}/medicines.json`).name ?? {}));
    const names = [...ours.flatMap((one) => one.names), ...theirs].filter((name) => !name.includes(","));
    expect(names.length).toBeGreaterThan(500);
    for (const name of new Set(names)) {
      expect(read(name)).toEqual({ fields: { name }, unknown: null });
      expect(read(`${name} 100 mg tablet 4 mg/kg q12h`).fields).toMatchObject({ name, tablet: "100 mg" });
      expect(read(`${name}, tablet 100 mg, dose 4 mg/kg`).fields).toMatchObject({ name, tablet: "100 mg" });
    }
  });
});

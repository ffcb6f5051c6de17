import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clinicPath } from "#plan/read-clinic.js";
import { readPlan } from "#plan/read-plan.js";
import { bytes, clinicText, dogText, read, seen } from "./help.js";

describe("a plan that reads", () => {
  it("keeps every scalar as it was typed", () => {
    const { value, problems } = read(dogText);
    expect(problems).toEqual([]);
    expect(value?.patient.weight).toEqual({ value: "24.6", unit: "kg" });
    expect(value?.estimate?.paid).toBe("150.00");
    expect(value?.medicines[0]?.["last given"]).toBe("08:30");
    expect(value?.discharged).toBe("2026-03-02T16:30");
    expect(value?.clinic.hours.sunday).toEqual([]);
    expect(value?.clinic["after hours"].phone).toBe("+13125550187");
  });

  it("knows where each value was written", () => {
    const places = read(dogText).value?.places ?? {};
    const line = dogText.split("\n").findIndex((text) => text.includes("- change every day"));
    expect(places["care/0/course/0"]).toMatchObject({ file: "plan.yaml", line: line + 1, column: 9 });
    expect(places["clinic/country"]?.file).toBe("clinic.yaml");
  });

  it("reads the same plan written as JSON", () => {
    const json = JSON.stringify({
      format: "hearthsheet/1",
      clinic: "clinic.yaml",
      discharged: "2026-03-02 16:30",
      patient: { name: "Bramble", species: "dog", sex: "female", weight: "24.6 kg" },
      owner: { name: "Lucía", language: "es" },
      reason: "An abscess",
      care: [{ topic: "abscess-home-care" }],
      estimate: { paid: 150.5, items: [] },
    });
    const { value, problems } = read(json);
    expect(problems).toEqual([]);
    expect(value?.estimate?.paid).toBe("150.5");
  });

  it("finds the clinic profile's path", () => {
    expect(clinicPath({ file: "plan.yaml", bytes: bytes(dogText) })).toBe("../clinic.yaml");
    expect(clinicPath({ file: "plan.yaml", bytes: bytes("clinic: {name: here}") })).toBeNull();
    expect(clinicPath({ file: "plan.yaml", bytes: bytes(": : :") })).toBeNull();
  });
});

describe("a plan that does not", () => {
  const with_ = (from: string, to: string) => {
    expect(dogText).toContain(from);
    return dogText.replace(from, to);
  };
  const cases: [string, string, string, string][] = [
    ["a missing unit", "weight: 24.6 kg", "weight: 24.6", "unit-missing [24.6]"],
    ["an unknown unit", "weight: 24.6 kg", "weight: 24.6 stone", "unit-unknown [stone]"],
    ["a decimal comma", "weight: 24.6 kg", "weight: '24,6 kg'", "number-unreadable [24,6]"],
    [
      "no drop in a millilitre",
      "last given: 08:30",
      "last given: 08:30\n    drops per mL: 0",
      "number-not-positive [0]",
    ],
    ["a negative weight", "weight: 24.6 kg", "weight: -3 kg", "number-not-positive [-3]"],
    ["a weight ten times too much", "weight: 24.6 kg", "weight: 246 kg", "weight-implausible [246 kg]"],
    ["a day that does not exist", "2026-03-02 16:30", "2026-02-30 16:30", "date-unreadable [2026-02-30 16:30]"],
    ["an hour that does not exist", "2026-03-02 16:30", "2026-03-02 26:30", "time-unreadable [26:30]"],
    ["an hour the clocks skip", "2026-03-02 16:30", "2026-03-08 02:30", "time-skipped [2026-03-08 02:30]"],
    ["a year mistyped", "2026-03-02 16:30", "2025-03-02 16:30", "discharge-not-today [2025-03-02 16:30]"],
    ["an unknown field", "species: dog", "specis: dog", "field-unknown [specis]"],
    ["a choice that is not one", "species: dog", "species: dgo", "not-a-choice [dgo]"],
    ["born after it was treated", "born: 2019-05", "born: 2027-05", "born-after-discharge [2027-05]"],
    ["no e-mail address", "lucia.ferrer@example.org", "lucia at example", "email-unreadable [lucia at example]"],
    [
      "a reason for no known problem",
      "problem: discharge-not-today",
      "problem: discharg-not-today",
      "allow-unknown [discharg-not-today]",
    ],
  ];
  it.each(cases)("%s", (_, from, to, expected) => {
    const [code, words] = expected.split(" [");
    expect(seen(with_(from, to)).map((line) => line.replace(/ \d+:\d+ /, " ["))).toContain(`${code} [[${words}`);
  });

  it("says all that is wrong, once each", () => {
    const text = dogText
      .replace("weight: 24.6 kg", "weight: 24.6")
      .replace("species: dog", "species: dgo")
      .replace("neck: 41 cm", "neck: 41")
      .replace("clinic: ../clinic.yaml", "clinic: ../clinic.yaml\nclinik: x");
    expect(
      seen(text)
        .map((line) => line.split(" ")[0])
        .sort(),
    ).toEqual(["field-unknown", "not-a-choice", "unit-missing", "unit-missing"]);
  });

  it("tells a plan and its clinic profile apart", () => {
    const clinic = clinicText
      .replace("rate: 6.25 %", "rate: 6.25")
      .replace("phone: +1 312 555 0142", "phone: 555 0142");
    expect(seen(dogText, clinic).every((line) => line.includes("clinic.yaml"))).toBe(true);
    expect(seen(dogText, clinic)).toHaveLength(2);
  });

  it("suggests the name that was meant", () => {
    const [problem] = read(dogText.replace("species: dog", "species: dgo")).problems;
    expect(problem?.values).toMatchObject({ near: ["dog"], choices: ["dog", "cat"] });
  });

  it("points at a YAML mistake", () => {
    expect(seen("format: hearthsheet/1\ncare: [a, b\nowner: x\n")[0]).toMatch(/^yaml-syntax 3:/);
    expect(seen("a: 1\na: 2\n")).toContain("field-twice 2:1 [a]");
  });

  const medicine = dogText.split("\n").findIndex((line) => line.includes("dose: ")) + 1;
  const moved = (by: string) => {
    const lines = dogText.split("\n");
    const line = lines[medicine - 1] ?? "";
    return lines.with(medicine - 1, by + line.trimStart()).join("\n");
  };
  it.each([
    ["a tab", "\t", "tab", medicine],
    ["a space too few", "   ", "column", medicine],
    ["a space too many", "     ", "column", medicine],
  ])("tells %s before a line once, and nothing that follows from it", (_, by, context, line) => {
    const { problems } = read(moved(by));
    expect(problems.map(({ code, at, values }) => [code, at.line, values])).toEqual([
      ["yaml-indent", line, { context }],
    ]);
  });

  it("tells wrong indents in two places as two, and a colon in words as what it is", () => {
    const twice = "a:\n  b: 1\n   c: 2\nd: 3\ne:\n  f: 1\n   g: 2\nh: one: two\n";
    expect(seen(twice).map((line) => line.replace(/ \[.*/, ""))).toEqual([
      "yaml-indent 3:4",
      "yaml-indent 7:4",
      "yaml-syntax 8:4",
    ]);
  });

  it("names opening hours that are none for what they are", () => {
    const clinic = clinicText.replace(/monday: .*/, "monday: 8-6");
    expect(seen(dogText, clinic).map((line) => line.replace(/ clinic.*\[/, " ["))).toEqual(["hours-unreadable [8-6]"]);
  });
});

describe("any bytes at all", () => {
  const codes = (plan: Uint8Array) =>
    readPlan({ plan: { file: "p", bytes: plan } }, { today: "2026-03-02" }).problems.map(({ code }) => code);

  it("refuses what is no text of a plan", () => {
    expect(codes(bytes(""))).toEqual(["file-empty"]);
    expect(codes(bytes(" \n\t"))).toEqual(["file-empty"]);
    expect(codes(new Uint8Array([65, 0, 66]))).toEqual(["file-not-text"]);
    expect(codes(new Uint8Array([65, 0xff, 66]))).toEqual(["file-not-text"]);
    expect(codes(new Uint8Array(5_000_000).fill(65))).toEqual(["file-too-large"]);
  });

  it("does not follow aliases or deep nesting", () => {
    expect(codes(bytes("a: &x [1]\nb: *x\n"))).toContain("alias-not-allowed");
    expect(codes(bytes(`${"[".repeat(60)}${"]".repeat(60)}`))).toContain("nested-too-deep");
    expect(codes(bytes('reason: "\\ud83d"'))).toContain("character-broken");
    expect(codes(bytes('reason: "\\ud83d\\udc3e"'))).not.toContain("character-broken");
  });

  it("never throws, and always has a problem or a plan", () => {
    const texts = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.json(),
      fc
        .record({ at: fc.nat(dogText.length), cut: fc.nat(40), put: fc.string() })
        .map(({ at, cut, put }) => dogText.slice(0, at) + put + dogText.slice(at + cut)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const { value, problems } = read(text);
        expect(value !== null || problems.length > 0).toBe(true);
        for (const { at } of problems) expect(at.line).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});

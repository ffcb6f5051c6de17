import { describe, expect, test } from "vitest";
import { computeDoses } from "#compute/doses/doses.js";
import { example, medicines } from "./help.js";

const computed = (name: string) => computeDoses(example(name), medicines);

describe("the dog with the cheek abscess", () => {
  const { value, problems } = computed("dog-cheek-abscess");

  test("builds without a stop or a question", () => expect(problems).toEqual([]));

  // 13.75 mg/kg x 24.6 kg = 338.25 mg; 4.4 mg/kg x 24.6 kg = 108.24 mg; worked by hand.
  test("gives whole tablets and says how far off they are", () => {
    const active = value?.medicines.map(({ give, active }) => [
      give.value,
      active?.amount.value,
      active?.perKg.value,
      active?.percentOff,
    ]);
    expect(active).toEqual([
      ["1", "375", "15.24", "+10.9"],
      ["1", "100", "4.07", "-7.6"],
    ]);
  });

  test("counts what goes home", () => {
    expect(value?.medicines.map(({ doses, dispense, leftOver }) => [doses.length, dispense, leftOver.value])).toEqual([
      [14, { value: "14", unit: "tablet" }, "0"],
      [4, { value: "4", unit: "tablet" }, "0"],
    ]);
  });

  // Given at 08:30 and 09:00: half an hour, and an hour, before the household's time is near enough.
  test("begins at the household's times and ends at the right one", () => {
    expect(value?.medicines.map(({ first, last }) => [first, last])).toEqual([
      ["2026-03-02T20:00", "2026-03-09T08:00"],
      ["2026-03-03T08:00", "2026-03-06T08:00"],
    ]);
  });

  test("charts both medicines in the morning and one in the evening; clocks go forward on the 8th", () => {
    expect(value?.chart?.columns.map(({ medicine, at, part }) => `${at} ${part} ${medicine}`)).toEqual([
      "08:00 morning amoxicillin-clavulanate",
      "08:00 morning carprofen",
      "20:00 evening amoxicillin-clavulanate",
    ]);
    const drawn = value?.chart?.rows.map(
      ({ day, cells }) => `${day} ${cells.map((cell) => cell?.give.value ?? "-").join(" ")}`,
    );
    expect(drawn).toEqual([
      "2026-03-02 - - 1",
      "2026-03-03 1 1 1",
      "2026-03-04 1 1 1",
      "2026-03-05 1 1 1",
      "2026-03-06 1 1 1",
      "2026-03-07 1 - 1",
      "2026-03-08 1 - 1",
      "2026-03-09 1 - -",
    ]);
  });

  test("each dose says where it was written", () => {
    expect(value?.medicines[1]?.doses[0]?.from).toMatchObject({
      file: "examples/dog-cheek-abscess/plan.yaml",
      line: 34,
    });
  });
});

describe("the cat with the small abscess", () => {
  const { value, problems } = computed("cat-abscess-at-home");

  test("builds without a stop or a question", () => expect(problems).toEqual([]));

  // 62.5 mg for a cat of 4.2 kg is 14.88 mg/kg; given at 10:45, so the evening is nine hours and a quarter later.
  test("gets a millilitre twice a day from the evening on", () => {
    const [medicine] = value?.medicines ?? [];
    expect(medicine).toMatchObject({
      give: { value: "1", unit: "mL" },
      first: "2026-03-05T20:00",
      last: "2026-03-12T08:00",
    });
    expect(medicine?.active).toMatchObject({
      amount: { value: "62.5", unit: "mg" },
      perKg: { value: "14.88" },
      percentOff: null,
    });
    expect(medicine?.dispense).toEqual({ value: "14", unit: "mL" });
  });

  test("is told to keep the liquid in the fridge, and nothing of foil", () => {
    const said = value?.medicines[0]?.statements.map(({ id }) => id);
    expect(said).toContain("clavulanate.fridge");
    expect(said).not.toContain("clavulanate.foil");
  });
});

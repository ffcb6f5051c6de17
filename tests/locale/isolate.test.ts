import bidiFactory, { type Bidi } from "bidi-js";
import { expect, it } from "vitest";
import { newHoles } from "#compose/holes.js";
import { lineOf } from "#compose/inlines.js";
import { wordsOf } from "#handout/walk.js";
import { isolated } from "#locale/isolate.js";
import { numbersOf } from "#locale/numbers.js";

const bidi = (bidiFactory as unknown as () => Bidi)();
const seen = (text: string) =>
  bidi.getReorderedString(text, bidi.getEmbeddingLevels(text, "rtl")).replace(/[\u2066-\u2069]/g, "");

it.each(["555-0142", "(312) 555-0142", "+1 312 555 0142", "Juniper Row", "9:30 AM", "desk@example.org", "12-14"])(
  "%s is never turned round in a line of Arabic",
  (value) => {
    expect(seen(`اتصل على ${isolated(value, "rtl")} الآن`)).toContain(value);
  },
);

it("without it a bare phone number is (so the rule is needed)", () =>
  expect(seen("اتصل على 555-0142 الآن")).toContain("0142-555"));

it("what runs the page's way is left alone, and nothing is isolated twice", () => {
  expect(isolated("Bramble", "ltr")).toBe("Bramble");
  expect(isolated("بسبوس", "rtl")).toBe("بسبوس");
  expect(isolated("5", "rtl")).toBe("5");
  expect(isolated("بسبوس", "ltr")).toBe("\u2068بسبوس\u2069");
  expect(isolated(isolated("Bramble", "rtl"), "rtl")).toBe("\u2068Bramble\u2069");
});

it("bold ends where Chinese ends it, with no space after", () => {
  const holes = newHoles("ltr");
  const line = lineOf(`**下次用药：**${holes.inline({ kind: "text", text: "明天" })}`, holes);
  expect(wordsOf(line)).toBe("下次用药：明天");
  expect(line[0]).toMatchObject({ strong: true });
});

// UAX #9, the examples of its section on reordering (rule L2; quoted from memory; Unicode's own cases: tests/pdf/bidi-conformance.test.ts): capitals stand for letters from right to left.
it.each([
  ["ltr", "car means CAR.", "car means RAC."],
  ["rtl", "car MEANS CAR.", ".RAC SNAEM car"],
  ["ltr", "he said “THE VALUES ARE 123, 456, 789, OK”.", "he said “KO ,789 ,456 ,123 ERA SEULAV EHT”."],
] as const)("%s: %s is seen as UAX #9 shows it", (direction, written, shown) => {
  const hebrew = (text: string) =>
    text.replace(/[A-Z]/g, (letter) => String.fromCharCode(0x5d0 + letter.charCodeAt(0) - 65));
  const text = hebrew(written);
  const order = bidi.getReorderedString(text, bidi.getEmbeddingLevels(text, direction));
  expect(order).toBe(hebrew(shown));
});

it("an amount is one thing in a line of Arabic: its sign is not parted", () => {
  const amount = isolated(numbersOf("ar-US").money(4800, "USD"), "rtl");
  expect(seen(`المبلغ ${amount} اليوم`)).toContain("US$");
});

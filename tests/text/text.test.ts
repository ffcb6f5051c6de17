import bidiFactory, { type Bidi } from "bidi-js";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Handout, Inline, Section } from "#handout/handout.js";
import { renderText } from "#render/text/text.js";
import { wrap } from "#render/text/wrap.js";
import { everyNode } from "../handouts/every-node.js";
import { latinWords, randomHandout } from "../handouts/random.js";

const bidi = (bidiFactory as unknown as () => Bidi)();
const text = (words: string): Inline => ({ kind: "text", text: words });
const holding = (...blocks: Section["blocks"]): Handout => ({
  ...everyNode,
  sections: [{ kind: "section", id: "one", level: 2, weight: "plain", title: [text("One")], blocks }],
});
const saying = (...inlines: Inline[]): Handout => holding({ kind: "paragraph", role: "body", inlines });

// Columns of a terminal or mail program: CJK and emoji take two (Unicode East Asian Width, W and F).
const columns = (line: string): number =>
  [...line].reduce(
    (sum, char) => sum + (/[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uff00-\uff60]/u.test(char) ? 2 : 1),
    0,
  );

test("reads well: every kind of node", async () => {
  await expect(renderText(everyNode)).toMatchFileSnapshot("every-node.txt");
});

test("keeps to 72 columns, LF, no space at the end of a line, no control character", () => {
  const wide = fc.string({ unit: fc.constantFrom("傷", "は", "閉", "。", "한", "글", " ", "a"), maxLength: 120 });
  fc.assert(
    fc.property(randomHandout(fc.oneof(latinWords, wide, fc.string({ unit: "binary-ascii" }))), (handout) => {
      const printed = renderText(handout);
      const lines = printed.split("\n");
      expect(lines.filter((line) => columns(line) > 72)).toEqual([]);
      expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
      expect(printed).not.toMatch(/[^\n\P{Cc}]/u);
      expect(printed.endsWith("\n") && !printed.endsWith("\n\n")).toBe(true);
    }),
    { numRuns: 100 },
  );
});

test("a value never becomes a line of its own, such as a header or a rule", () => {
  const printed = renderText(saying(text("Rex\r\nBcc: a@example.org\n-----\n\u001b[31mred\u2028end")));
  expect(printed).toContain("Rex Bcc: a@example.org ----- [31mred end");
});

test("an amount and its unit, a price or a phone is not broken over two lines", () => {
  const dose: Inline = {
    kind: "dose",
    medicine: "x",
    amount: "1.5",
    unit: "tablet",
    text: "1½ tablets of it",
    from: "",
  };
  for (let length = 40; length < 80; length++) {
    expect(renderText(saying(text("x".repeat(length)), text(" "), dose))).toContain("1½ tablets of it");
  }
});

test("an address is written out where the words hide it", () => {
  const email = (words: string): Inline => ({ kind: "email", address: "desk@example.org", text: words, from: "" });
  expect(renderText(saying(email("Write to us")))).toContain("Write to us <desk@example.org>");
  expect(renderText(saying(email("desk@example.org")))).not.toContain("<desk");
});

test("a name that is parted by the end of a line is kept to itself on both", () => {
  const name = `\u2068${"Juniper Row Animal Clinic of Riverbend ".repeat(3).trim()}\u2069`;
  const page: Handout = {
    ...saying(text("اتصل بعيادة "), text(name), text(" الآن.")),
    language: "ar",
    direction: "rtl",
  };
  const lines = renderText(page)
    .split("\n")
    .filter((line) => /Juniper Row Animal|Riverbend/.test(line) && line.includes("\u2068"));
  expect(lines.length).toBeGreaterThan(1);
  for (const line of lines)
    expect([...line.matchAll(/[\u2066-\u2068]/g)].length).toBe([...line.matchAll(/\u2069/g)].length);
});

test("each line of a page from right to left runs that way, whatever is on it (UAX #9, P2 and P3)", () => {
  const page: Handout = { ...saying(text("\u2068555-0142\u2069")), language: "ar", direction: "rtl" };
  const lines = renderText(page)
    .split("\n")
    .filter((line) => line !== "");
  expect(lines.filter((line) => bidi.getEmbeddingLevels(line).paragraphs[0]?.level !== 1)).toEqual([]);
});

test("a form to fill in is a row of boxes after each question, each beside its day, and room to write a number", () => {
  const cell = (...inlines: Inline[]) => ({ inlines, align: "center" as const });
  const tick: Inline = { kind: "tick", label: "" };
  const days = ["Mon, Mar 2", "Tue, Mar 3", "Wed, Mar 4", "Thu, Mar 5"];
  const form = holding({
    kind: "table",
    caption: [text("Log")],
    head: [text("Each day"), ...days.map(text)].map((one) => cell(one)),
    rows: [
      [cell(text("Ate as usual")), ...days.map(() => cell(tick))],
      [cell(text("Breaths")), ...days.map(() => cell())],
    ],
    foot: [],
  });
  expect(renderText(form)).toContain(`Log
- Ate as usual
  [ ] Mon, Mar 2; [ ] Tue, Mar 3; [ ] Wed, Mar 4; [ ] Thu, Mar 5
- Breaths
  Mon, Mar 2: ____; Tue, Mar 3: ____; Wed, Mar 4: ____; Thu, Mar 5: ____
`);
});

test("lines break where Unicode lets them: no line of Chinese or Korean begins with a comma, no word is cut at a hyphen (UAX #14, LB13)", () => {
  for (let before = 0; before < 12; before++) {
    const chinese = wrap(`${"一".repeat(before)}${"如果戴着不能吃或不能喝，也请打电话。".repeat(8)}`);
    for (const line of chinese.split("\n")) {
      expect(columns(line)).toBeLessThanOrEqual(72);
      expect(line).not.toMatch(/^[，。]/u);
    }
    const korean = wrap(`${"가".repeat(before)}${"붕대가 젖었습니까? 전화하십시오, 기다리지 마십시오. ".repeat(8)}`);
    for (const line of korean.split("\n")) {
      expect(columns(line)).toBeLessThanOrEqual(72);
      expect(line).not.toMatch(/^[?,.]/u);
    }
    const english = wrap(`${"x".repeat(50 + before)} amoxicillin-clavulanate`);
    expect(english).toContain("amoxicillin-clavulanate");
  }
  expect(wrap("y".repeat(100))).toBe(`${"y".repeat(72)}\n${"y".repeat(28)}`);
});

import bidiFactory, { type Bidi } from "bidi-js";
import fc from "fast-check";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import type { Figure, Handout } from "#handout/handout.js";
import { fromStart, levelsOf, stretchesOf } from "#render/pdf/bidi.js";
import { layout } from "#render/pdf/layout.js";
import { renderPdf } from "#render/pdf/pdf.js";
import { arabic, chinese, vietnamese } from "../handouts/scripts.js";
import { allFonts } from "./all-fonts.js";
import { fonts as plainFonts, tool } from "./help.js";
import { wordsInOrder } from "./words-in-order.js";

const paper = { paper: "letter", large: false } as const;
const bytesOf = (handout: Handout, large = false): Uint8Array => {
  const { value, problems } = renderPdf(handout, { ...paper, large, fonts: allFonts });
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
};
const marks = /[\u2066-\u2069]/g;
const wordsIn = (text: string) =>
  text
    .replace(marks, "")
    .split(/\s+/)
    .filter((word) => word !== "");

/** The words of a document in the order its text is in, as pdf.js gives them. */
async function readBack(bytes: Uint8Array): Promise<string> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  let text = "";
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    text += items.map((item) => ("str" in item ? item.str + (item.hasEOL ? " " : "") : "")).join(" ");
  }
  return text;
}

/** The share of the words that come back in their order: the longest common subsequence. */
function inOrder(wanted: string[], found: string[]): number {
  let row = new Array<number>(found.length + 1).fill(0);
  for (const word of wanted) {
    const next = [0];
    for (let at = 0; at < found.length; at++)
      next.push(word === found[at] ? (row[at] ?? 0) + 1 : Math.max(row[at + 1] ?? 0, next[at] ?? 0));
    row = next;
  }
  return (row.at(-1) ?? 0) / wanted.length;
}

describe("Arabic", () => {
  const words = wordsIn(wordsInOrder(arabic).join(" "));
  it.each([false, true])(
    "at least 95 of 100 words come back from pdf.js in the order they are read (large: %s)",
    async (large) =>
      expect(inOrder(words, wordsIn(await readBack(bytesOf(arabic, large))))).toBeGreaterThanOrEqual(0.95),
  );

  it("a phone number is never turned round, on the page or for a reader", async () => {
    expect(await readBack(bytesOf(arabic))).toContain("(312) 555-0142");
    expect(tool("pdftotext", ["FILE", "-"], bytesOf(arabic)).out).toContain("(312) 555-0142");
  });

  it("the page is mirrored: titles, marks of lists, first columns and the first day of a week stand at the right", () => {
    const placed = layout(arabic, { ...paper, fonts: allFonts }).value ?? [];
    const turned = layout({ ...arabic, direction: "ltr" }, { ...paper, fonts: allFonts }).value ?? [];
    const at = (all: typeof placed, words: string) =>
      all.flatMap(({ piece }) => piece.marks).find((mark) => mark.kind === "text" && mark.text.trim() === words);
    for (const words of ["بمن تتصل", "•", "البند", "الأحد", "مارس"]) {
      const [right, left] = [at(placed, words), at(turned, words)];
      if (right?.kind !== "text" || left?.kind !== "text") throw new Error(words);
      expect(612 - right.x - right.width).toBeCloseTo(left.x, 5);
      expect(right.x).toBeGreaterThan(306);
    }
  });

  it("figures stand under each other by their right ends", () => {
    const placed = layout(arabic, { ...paper, fonts: allFonts }).value ?? [];
    const ends = placed
      .flatMap(({ piece }) => piece.marks)
      .flatMap((mark) => (mark.kind === "text" && /^\$(48|39|87)\.00$/.test(mark.text) ? [mark.x + mark.width] : []));
    expect(ends.length).toBe(3);
    expect(new Set(ends.map((end) => end.toFixed(3))).size).toBe(1);
  });

  it("a drawing is turned over with its page, and what stands upright is only moved", () => {
    const square = "M0 0H10V10H0Z";
    const figure: Figure = {
      kind: "figure",
      id: "two",
      width: 300,
      height: 20,
      shapes: [
        { path: square, fill: "ink" },
        { path: square, fill: "pale", upright: 50 },
      ],
      labels: [{ text: "أ", x: 100, y: 10, size: 12, align: "start" }],
      alt: "شكلان",
      caption: [],
    };
    const [first] = arabic.sections;
    if (!first) throw new Error("no section");
    const drawn = (direction: "ltr" | "rtl") =>
      (
        layout({ ...arabic, direction, sections: [{ ...first, blocks: [figure] }] }, { ...paper, fonts: allFonts })
          .value ?? []
      )
        .filter(({ piece }) => piece.what === "figure")
        .flatMap(({ piece }) => piece.marks);
    const [turned, moved, label] = drawn("rtl");
    const [left, leftUpright, leftLabel] = drawn("ltr");
    if (turned?.kind !== "path" || moved?.kind !== "path" || label?.kind !== "text") throw new Error("marks");
    if (left?.kind !== "path" || leftUpright?.kind !== "path" || leftLabel?.kind !== "text") throw new Error("marks");
    expect([turned.flipped, moved.flipped]).toEqual([true, undefined]);
    expect(turned.x).toBeCloseTo(612 - left.x, 5);
    // The line it stands about is as far from the right edge as it was from the left.
    expect(612 - (moved.x + 50 * moved.scale)).toBeCloseTo(leftUpright.x + 50 * leftUpright.scale, 5);
    expect(612 - label.x - label.width).toBeCloseTo(leftLabel.x, 5);
  });

  it("an address of several lines, each kept to itself, is read from its beginning", async () => {
    const address = ["\u206818 Juniper Row\u2069", "\u2068Riverbend, IL 60000\u2069"];
    const read = await readBack(bytesOf({ ...arabic, clinic: { ...arabic.clinic, address } }));
    expect(read).toContain("18 Juniper Row, Riverbend, IL 60000");
  });

  it("says that it is bound and read from the right", () =>
    expect(Buffer.from(bytesOf(arabic)).toString("latin1")).toMatch(/\/Direction \/?\(?R2L/));

  it("any letters and marks in any order are drawn, and the same twice (fontkit 2.0.4 throws on some in other fonts)", () => {
    const letter = fc.constantFrom(..."ابتثجحخدذرزسشصضطظعغفقكلمنهويءآأؤإئىةًٌٍَُِّْٰ ()123-");
    const one = fc.string({ unit: letter, minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(one, (title) => {
        const made = bytesOf({ ...arabic, title: `ا${title}`, sections: [] });
        expect(Buffer.from(made).equals(Buffer.from(bytesOf({ ...arabic, title: `ا${title}`, sections: [] })))).toBe(
          true,
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe("which way words run", () => {
  const bidi = (bidiFactory as unknown as () => Bidi)();
  /** UAX #9 as bidi-js orders characters; our order is of whole stretches. */
  const unit = fc.constantFrom(..."abc אבג ابت 123 (-).,:+$%/", "\u2066", "\u2067", "\u2068", "\u2069", "\u200f");
  it("stretches stand as bidi-js would set their characters, on lines of either direction", () =>
    fc.assert(
      fc.property(fc.string({ unit, maxLength: 30 }), fc.constantFrom("ltr", "rtl"), (text, direction) => {
        // Spaces at the end are the line's affair (rule L1).
        const line = `${text}.`;
        const levels = levelsOf(line, direction) ?? new Uint8Array(line.length);
        const stretches = stretchesOf(line, levels);
        const seen = fromStart(
          stretches.map(({ level }) => level),
          "ltr",
        ).map((index) => stretches[index]);
        const ours = seen
          .map((one) => (one && one.level % 2 === 1 ? [...one.text].reverse().join("") : one?.text))
          .join("");
        const theirs = bidi
          .getReorderedIndices(line, bidi.getEmbeddingLevels(line, direction))
          .map((index) => line[index])
          .join("");
        return ours === theirs;
      }),
      { numRuns: 500 },
    ));

  // UAX #9, section 3.4, rule L2, its third example: capitals stand for right-to-left letters.
  it("he said “THE VALUES ARE 123, 456, 789, OK”.", () => {
    const words = ["he said “", "THE VALUES ARE ", "123", ", ", "456", ", ", "789", ", OK", "”."];
    const order = fromStart([0, 1, 2, 1, 2, 1, 2, 1, 0], "ltr").map((index) => words[index]);
    expect(order).toEqual(["he said “", ", OK", "789", ", ", "456", ", ", "123", "THE VALUES ARE ", "”."]);
  });
});

describe("Chinese and Vietnamese", () => {
  it.each([
    ["Chinese", chinese],
    ["Vietnamese", vietnamese],
  ])("all the words of %s come back from pdf.js", async (_, handout) => {
    const squeeze = (text: string) => text.replace(/\s/g, "");
    const found = squeeze(await readBack(bytesOf(handout)));
    for (const words of wordsInOrder(handout)) if (words.trim()) expect(found).toContain(squeeze(words));
  });

  it("no line of Chinese begins with a mark that closes (UAX #14, class CL)", () => {
    const long = { ...chinese, title: "让绷带保持干净、干燥，不要让狗狗舔或咬伤口。".repeat(8) };
    const lines = (layout(long, { ...paper, large: true, fonts: allFonts }).value ?? []).flatMap(({ piece }) =>
      piece.marks.slice(0, 1).flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])),
    );
    expect(lines.filter((line) => line.length > 4).length).toBeGreaterThan(8);
    expect(lines.filter((line) => /^[、，。：）”]/.test(line))).toEqual([]);
  });

  it("each is drawn with one family, and with no other", () => {
    const families = (handout: Handout) =>
      new Set(tool("pdffonts", ["FILE"], bytesOf({ ...handout })).out.match(/\+[A-Za-z]+/g) ?? []);
    expect([...families(vietnamese)]).toEqual(["+NotoSans"]);
    expect([...families(chinese)].every((name) => name.startsWith("+NotoSansSC"))).toBe(true);
    expect([...families(arabic)]).toEqual(["+Vazirmatn"]);
  });
});

it("a name in another script is drawn with a font that has it, on a page in the first font", () => {
  const named = { ...vietnamese, title: "Bramble and بسبوس go home", subtitle: [], sections: [], language: "en" };
  const { out } = tool("pdffonts", ["FILE"], bytesOf(named));
  expect(out).toMatch(/\+AtkinsonHyperlegibleNext/);
  expect(out).toMatch(/\+Vazirmatn/);
});

it("a rarer character is told with its place and never lost", () => {
  // U+4DB5 is in no list of common characters.
  const from = "plan.yaml:7:3";
  const sign = { kind: "statement" as const, id: "x", from, inlines: [{ kind: "text" as const, text: "䶵" }] };
  const rare = { ...chinese, subtitle: [sign] };
  expect(renderPdf(rare, { ...paper, fonts: allFonts }).problems).toMatchObject([
    { code: "glyph-missing", at: { file: "plan.yaml", line: 7, column: 3 }, values: { codepoint: "U+4DB5" } },
  ]);
  expect(renderPdf(chinese, { ...paper, fonts: plainFonts }).value).toBeNull();
});

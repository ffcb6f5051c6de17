import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Leaf } from "#handout/handout.js";
import { layout } from "#render/pdf/layout.js";
import type { Mark, PlacedPiece } from "#render/pdf/piece.js";
import { colours, sheetOf } from "#render/pdf/sheet.js";
import type { Tag } from "#render/pdf/tag.js";
import { contrast } from "../contrast.js";
import { everyNode } from "../handouts/every-node.js";
import { paperDog } from "../handouts/paper-dog.js";
import { randomHandout } from "../handouts/paper-random.js";
import { type Cut, cuts, fonts, pdfOf, tagOf } from "./help.js";
import { squeezed, wordsInOrder } from "./words-in-order.js";

const runs = Number(process.env["PDF_CASES"] ?? 100);
const seed = Number(process.env["PDF_SEED"] ?? 20260302);
const cut = fc.constantFrom(...cuts);

const placedOf = (handout: Parameters<typeof layout>[0], options: Cut): PlacedPiece[] => {
  const { value, problems } = layout(handout, { ...options, fonts });
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
};
const body = (placed: PlacedPiece[]) => placed.filter(({ piece }) => piece.what !== "running");
const pagesOf = (placed: PlacedPiece[]) =>
  Array.from({ length: (placed.at(-1)?.page ?? 0) + 1 }, (_, page) => body(placed).filter((one) => one.page === page));
const textOf = (mark: Mark) => (mark.kind === "text" ? mark.text : "");
const isIn = (mark: Mark, owner: Tag | null): boolean => {
  for (let tag = mark.tag; tag; tag = tag.parent) if (tag === owner) return true;
  return false;
};
const within = (piece: PlacedPiece["piece"], type: string): Tag | null =>
  piece.marks.map((mark) => tagOf(mark, type)).find((tag) => tag !== null) ?? null;

/** What a reader would find wrong with the boxes of a page, in words. */
function faultsOf(placed: PlacedPiece[], options: Cut): string[] {
  const sheet = sheetOf(options.paper, options.large);
  const near = 0.02;
  const faults: string[] = [];
  for (const { page, y, piece } of placed) {
    const hold = (right: boolean, fault: string): void => {
      if (!right) faults.push(`${piece.what} on page ${page + 1}: ${fault}`);
    };
    const [top, bottom] = piece.what === "running" ? [36, sheet.height - 36] : [54 - 9, sheet.bottom];
    hold(piece.x >= 54 - near && piece.x + piece.width <= sheet.width - 54 + near, "outside the side margins");
    hold(y >= top && y + piece.height <= bottom + near, "outside the top or bottom margin");
    for (const mark of piece.marks) {
      if (mark.kind === "empty") continue;
      const box = mark.kind === "path" ? mark.box : mark;
      const spaces = mark.kind === "text" ? mark.text.length - mark.text.trimEnd().length : 0;
      const hanging = mark.kind === "text" ? spaces * mark.style.size * 0.5 : 0;
      hold(box.x >= 54 - near, `"${textOf(mark)}" begins left of the margin`);
      hold(box.x + box.width <= sheet.width - 54 + 0.5 + hanging, `"${textOf(mark)}" runs over the right margin`);
      if (mark.kind !== "text") continue;
      const least = tagOf(mark, "TR") ? 10 : piece.what === "running" ? 10.5 : tagOf(mark, "Figure") ? 0 : 12;
      hold(mark.style.size >= least, `${mark.style.size} pt is too small`);
      hold(mark.y > 0 && mark.y <= piece.height, `"${textOf(mark)}" stands outside its box`);
    }
  }
  return faults;
}

function overlapsOf(pieces: PlacedPiece[]): string[] {
  const found: string[] = [];
  for (const [index, one] of pieces.entries())
    for (const other of pieces.slice(index + 1)) {
      const apart =
        one.piece.x + one.piece.width <= other.piece.x + 0.02 ||
        other.piece.x + other.piece.width <= one.piece.x + 0.02 ||
        one.y + one.piece.height <= other.y + 0.02 ||
        other.y + other.piece.height <= one.y + 0.02;
      if (!apart) found.push(`${one.piece.what} over ${other.piece.what} on page ${one.page + 1}`);
    }
  return found;
}

/** Where two long texts part; a difference of whole sheets would fill the memory. */
function parting(one: string, other: string): { one: string; other: string } | null {
  if (one === other) return null;
  const at = [...one].findIndex((_, index) => one[index] !== other[index]);
  const from = Math.max(0, at - 20);
  return { one: one.slice(from, from + 60), other: other.slice(from, from + 60) };
}

/** The random sheets, placed once; each test holds all of them to one rule. */
const cases = fc
  .sample(fc.tuple(randomHandout, cut), { numRuns: runs, seed })
  .map(([handout, options], number) => ({ handout, options, number, placed: placedOf(handout, options) }));

describe(`${runs} random sheets, seed ${seed}`, () => {
  const each = (check: (one: (typeof cases)[number]) => void) => () => {
    for (const one of cases) {
      try {
        check(one);
      } catch (error) {
        throw new Error(`sheet ${one.number}, ${JSON.stringify(one.options)}`, { cause: error });
      }
    }
  };

  test(
    "nothing outside the margins, nothing too small",
    each(({ placed, options }) => expect(faultsOf(placed, options)).toEqual([])),
  );

  test(
    "no box over another",
    each(({ placed }) => expect(pagesOf(placed).flatMap(overlapsOf)).toEqual([])),
  );

  test(
    "no empty page, the last one included",
    each(({ placed }) => {
      for (const page of pagesOf(placed)) expect(page.length).toBeGreaterThan(0);
    }),
  );

  test(
    "a title keeps two lines or a row of what it heads",
    each(({ placed }) => {
      const pieces = body(placed).filter(({ repeated }) => !repeated);
      for (const [index, { piece, page }] of pieces.entries()) {
        if (piece.what !== "heading") continue;
        const section = within(piece, "Sect");
        const rest = pieces.slice(index + 1);
        const end = rest.findIndex((next) => !next.piece.marks.some((mark) => isIn(mark, section)));
        const headed = rest.slice(0, end < 0 ? undefined : end);
        const first = headed[0]?.piece.what;
        const count = first === "line" || first === "caption" ? 2 : 1;
        for (const next of headed.slice(0, count)) expect(next.page, next.piece.what).toBe(page);
      }
    }),
  );

  test(
    "a table's head stands over its rows on every page",
    each(({ placed }) => {
      for (const page of pagesOf(placed)) {
        const rows = page.filter(({ piece }) => piece.what === "row");
        for (const [index, { piece }] of rows.entries()) {
          const isHead = within(piece, "THead") !== null;
          const above = rows
            .slice(0, index)
            .some((row) => within(row.piece, "Table") === within(piece, "Table") && within(row.piece, "THead"));
          expect(isHead || above).toBe(true);
        }
      }
    }),
  );

  test(
    "an item shorter than a third of a page is on one page",
    each(({ placed, options }) => {
      const sheet = sheetOf(options.paper, options.large);
      const items = new Map<Tag, PlacedPiece[]>();
      for (const one of body(placed)) {
        const item = one.piece.what === "item" ? within(one.piece, "LI") : null;
        if (item) items.set(item, [...(items.get(item) ?? []), one]);
      }
      for (const lines of items.values()) {
        const height = lines.reduce((sum, { piece }) => sum + piece.height, 0);
        if (height < (sheet.bottom - sheet.top.other) / 3) expect(new Set(lines.map(({ page }) => page)).size).toBe(1);
      }
    }),
  );

  test(
    "every word is placed, and those outside tables in order",
    each(({ placed, handout }) => {
      const marks = body(placed).flatMap(({ piece, repeated }) => (repeated ? [] : piece.marks));
      const printed = squeezed(marks.map(textOf).join(""));
      for (const number of wordsInOrder(handout)
        .join(" ")
        .match(/\b\d+\. /g) ?? [])
        expect(printed).toContain(squeezed(number));
      const flowing = marks.filter((mark) => tagOf(mark, "Table") === null).map(textOf);
      const outside = { ...handout, sections: handout.sections.map(withoutTables) };
      expect(parting(squeezed(flowing.join("")), squeezed(wordsInOrder(outside).join("")))).toBeNull();
    }),
  );

  test("all of them draw", () => {
    for (const { handout, options } of cases.filter((_, index) => index % 10 === 0))
      expect(pdfOf(handout, options).length).toBeGreaterThan(0);
  }, 120_000);
});

type Part = Parameters<typeof layout>[0]["sections"][number];
const leafWithoutTables = (block: Leaf): Leaf[] => {
  if (block.kind === "table") return [];
  return block.kind === "month" ? [{ ...block, title: "", weekdays: [], weeks: [] }] : [block];
};
const withoutTables = (section: Part): Part => ({
  ...section,
  blocks: section.blocks.flatMap((block): Part["blocks"] => {
    if (block.kind === "section") return [withoutTables(block)];
    if (block.kind !== "columns") return leafWithoutTables(block);
    return [{ ...block, columns: block.columns.map((column) => column.flatMap(leafWithoutTables)) }];
  }),
});

describe.each([
  ["a dog's sheet", paperDog],
  ["every kind of node", everyNode],
])("%s", (_, handout) => {
  test.each(cuts)("keeps its margins and its boxes apart: $paper, large $large", (options) => {
    const placed = placedOf(handout, options);
    expect(faultsOf(placed, options)).toEqual([]);
    expect(pagesOf(placed).flatMap(overlapsOf)).toEqual([]);
  });
});

test("page one of the dog's sheet holds all that is urgent", () => {
  const placed = body(placedOf(paperDog, { paper: "letter", large: false }));
  const urgent = placed.filter(({ piece }) => piece.marks.some((mark) => textOf(mark).includes("swallowed")));
  expect(urgent.map(({ page }) => page)).toEqual([0]);
});

test("the measure is 55 to 75 characters where text runs (RNIB Clear Print: 60 to 70)", () => {
  for (const options of cuts.filter(({ large }) => !large)) {
    const lines = body(placedOf(paperDog, options)).flatMap(({ piece }) =>
      piece.what === "line" ? [piece.marks.map(textOf).join("").trim().length] : [],
    );
    const full = lines.sort((a, b) => b - a).slice(0, 5);
    for (const length of full) expect(length).toBeLessThanOrEqual(75);
    expect(Math.max(...full)).toBeGreaterThanOrEqual(55);
  }
});

test("a box to tick is at least 4 mm wide", () => {
  for (const options of cuts)
    for (const { piece } of placedOf(paperDog, options))
      for (const mark of piece.marks)
        if (mark.kind === "path" && mark.tag?.says.alt?.includes("AM"))
          expect(mark.box.width).toBeGreaterThanOrEqual((4 / 25.4) * 72);
});

test("words have 4.5:1 against the paper (WCAG 2.2, 1.4.3) and rules 3:1 (1.4.11)", () => {
  for (const colour of ["ink", "quiet", "accent"] as const)
    expect(contrast(colours[colour], "#ffffff")).toBeGreaterThanOrEqual(4.5);
  expect(contrast(colours.hairline, "#ffffff")).toBeGreaterThanOrEqual(3);
});

test.each(cuts.filter(({ large }) => !large))(
  "the signs to go for stand on one page, under their title: $paper",
  (options) => {
    const signs = Array.from({ length: 7 }, (_, i) => ({
      inlines: [{ kind: "text" as const, text: `Sign ${i + 1} ` }],
    }));
    const goNow = {
      kind: "section" as const,
      id: "go-now-whole",
      level: 2 as const,
      weight: "urgent" as const,
      title: [{ kind: "text" as const, text: "Go at once" }],
      blocks: [{ kind: "list" as const, mark: "bullet" as const, items: signs }],
    };
    const filler = (lines: number) => ({
      ...goNow,
      id: "filler",
      title: [{ kind: "text" as const, text: "Before" }],
      blocks: Array.from({ length: lines }, () => ({
        kind: "paragraph" as const,
        role: "body" as const,
        inlines: [{ kind: "text" as const, text: "A line." }],
      })),
    });
    for (let lines = 1; lines < 20; lines++) {
      const placed = placedOf({ ...paperDog, sections: [filler(lines), goNow] }, options);
      const pages = placed
        .filter(({ piece }) => piece.marks.some((mark) => mark.kind === "text" && /^(Sign \d|Go at)/.test(mark.text)))
        .map(({ page }) => page);
      expect(pages.length).toBeGreaterThanOrEqual(7);
      expect(new Set(pages).size, `after ${lines} lines`).toBe(1);
    }
  },
);

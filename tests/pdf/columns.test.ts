import { describe, expect, test } from "vitest";
import type { Leaf } from "#handout/handout.js";
import { layout } from "#render/pdf/layout.js";
import { everyNode } from "../handouts/every-node.js";
import { type Cut, fonts } from "./help.js";

const words = (text: string): Leaf => ({ kind: "paragraph", role: "body", inlines: [{ kind: "text", text }] });
const [first] = everyNode.sections;

/** The lines on which the first words of two columns stand, pages under each other, and whether they are one piece. */
function setIn(columns: Leaf[][], cut: Cut = { paper: "letter", large: false }) {
  const section = { ...(first ?? expect.fail()), blocks: [{ kind: "columns" as const, columns }] };
  const { value } = layout({ ...everyNode, sections: [section] }, { ...cut, fonts });
  const pieces = value ?? expect.fail();
  const lineOf = (start: string) => {
    for (const { page, y, piece } of pieces)
      for (const mark of piece.marks)
        if (mark.kind === "text" && mark.text.startsWith(start)) return { x: mark.x, y: page * 10_000 + y + mark.y };
    return expect.fail(start);
  };
  return { abreast: pieces.some(({ piece }) => piece.what === "columns"), one: lineOf("When"), other: lineOf("If") };
}

const short = [[words("When we are open")], [words("If we are closed")]];
const long = (start: string) => Array.from({ length: 14 }, (_, i) => words(i === 0 ? start : "One line. ".repeat(12)));

describe("columns", () => {
  test("stand beside each other on one line where there is room", () => {
    const { abreast, one, other } = setIn(short);
    expect(abreast).toBe(true);
    expect(other.y).toBe(one.y);
    expect(other.x).toBeGreaterThan(one.x + 100);
  });

  test.each([
    ["in large print", short, { paper: "letter", large: true } as const],
    ["where they are taller than half a page", [long("When we are open"), long("If we are closed")], undefined],
    [
      "where words that cannot be broken need more width than one of them",
      [[words("When we are open"), longLabel()], [words("If we are closed")]],
      undefined,
    ],
  ])("stand under each other %s, and lose nothing", (_, columns, cut) => {
    const { abreast, one, other } = setIn(columns, cut);
    expect(abreast).toBe(false);
    expect(other.x).toBe(one.x);
    expect(other.y).toBeGreaterThan(one.y + 10);
  });
});

/** A drawing whose words are longer than half a column of text. */
function longLabel(): Leaf {
  const label = {
    text: "Its rim reaches five centimetres past the nose",
    x: 0,
    y: 12,
    size: 10,
    align: "start" as const,
  };
  return {
    kind: "figure",
    id: "cone",
    width: 100,
    height: 20,
    shapes: [],
    labels: [label],
    alt: "A cone",
    caption: [],
  };
}

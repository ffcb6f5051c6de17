import { describe, expect, test } from "vitest";
import { layout } from "#render/pdf/layout.js";
import { sheetOf } from "#render/pdf/sheet.js";
import type { Tag } from "#render/pdf/tag.js";
import { everyExample, factsOf, handoutOf, house } from "../examples/examples.js";
import { cuts } from "./help.js";

const isInFigure = (tag: Tag | null): boolean => tag !== null && (tag.type === "Figure" || isInFigure(tag.parent));

// RNIB Clear Print: 12 pt or more, 16 to 22 in large print. Labels are a point under the notes of the page, as its tables are.
describe.each(everyExample)("%s in %s", (name, language) => {
  const handout = handoutOf(factsOf(name), language);
  test.each(cuts)("words in drawings can be read: $paper, large $large", ({ large, paper }) => {
    const { value } = layout(handout, { paper, large, fonts: house.fonts.pdf });
    const labels = (value ?? []).flatMap(({ piece }) =>
      piece.marks.flatMap((mark) => (mark.kind === "text" && isInFigure(mark.tag) ? mark : [])),
    );
    expect(labels.length).toBeGreaterThan(5);
    const least = sheetOf(paper, large).styles.small.size - 1;
    const small = labels.filter(({ style }) => style.size < least - 0.01);
    expect(small.map(({ text, style }) => `${text} at ${style.size.toFixed(1)} pt`)).toEqual([]);
  });
});

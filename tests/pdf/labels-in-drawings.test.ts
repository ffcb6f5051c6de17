import { describe, expect, test } from "vitest";
import { layout } from "#render/pdf/layout.js";
import { everyExample, factsOf, handoutOf, house } from "../examples/examples.js";
import { cuts, tagOf } from "./help.js";

// RNIB Clear Print: 12 pt or more, 16 to 22 in large print. A label of a drawing may be a point under that.
describe.each(everyExample)("%s in %s", (name, language) => {
  const handout = handoutOf(factsOf(name), language);
  test.each(cuts)("words in drawings can be read: $paper, large $large", ({ large, paper }) => {
    const { value } = layout(handout, { paper, large, fonts: house.fonts.pdf });
    const labels = (value ?? []).flatMap(({ piece }) =>
      piece.marks.flatMap((mark) => (mark.kind === "text" && tagOf(mark, "Figure") ? mark : [])),
    );
    expect(labels.length).toBeGreaterThan(5);
    const least = large ? 15 : 11;
    const small = labels.filter(({ style }) => style.size < least - 0.01);
    expect(small.map(({ text, style }) => `${text} at ${style.size.toFixed(1)} pt`)).toEqual([]);
  });
});

import { describe, expect, test } from "vitest";
import { render } from "#index.js";
import type { Piece } from "#render/pdf/piece.js";
import { bonded } from "#render/pdf/piece.js";
import { place } from "#render/pdf/place.js";
import { placeToEnd } from "#render/pdf/place-to-end.js";
import { everyExample, factsOf, handoutOf, house, whole } from "../examples/examples.js";
import { cuts, tool } from "./help.js";

const frame = { first: 0, other: 0, bottom: 100 };
const piece = (height: number, more: Partial<Piece> = {}): Piece => ({
  ...{ what: "line", x: 0, width: 10, height, before: 10, keep: false, marks: [] },
  ...more,
});
const title = (height = 10) => piece(height, { what: "rule", keep: true });
const pages = (pieces: Piece[]) => placeToEnd(pieces, frame, (some) => place(some, frame)).map(({ page }) => page);

describe("the last page", () => {
  test("that is filled by a third stays as it is", () => {
    expect(pages([piece(90), title(), piece(20)])).toEqual([0, 1, 1]);
  });

  test("gives up its few lines to the page before, where a little less white makes room", () => {
    const lines = [piece(20), piece(20), piece(20)];
    expect(place([...lines, piece(15)], frame).map(({ page }) => page)).toEqual([0, 0, 0, 1]);
    expect(pages([...lines, piece(15)])).toEqual([0, 0, 0, 0]);
  });

  test("takes the section before along, where there is no room", () => {
    const pieces = [piece(40), title(), piece(20), title(), piece(10)];
    expect(place(pieces, frame).map(({ page }) => page)).toEqual([0, 0, 0, 1, 1]);
    expect(pages(pieces)).toEqual([0, 1, 1, 1, 1]);
  });

  test("holds its few lines where nothing helps", () => {
    expect(pages([piece(100), piece(10)])).toEqual([0, 1]);
  });
});

test("the lines of an item stay together also in a group that no page can hold", () => {
  const item = (height: number) => bonded([piece(height, { keep: true }), piece(height), piece(height)]);
  const tied = [...item(20), ...item(12)].map((one) => ({ ...one, before: 0, keep: true }));
  const placed = place([...tied, piece(10, { before: 0 })], frame).map(({ page }) => page);
  expect(placed.slice(0, 3)).toEqual([0, 0, 0]);
  expect(new Set(placed.slice(3, 6)).size).toBe(1);
});

// The cautions alone on a page are read by nobody.
test.each(
  everyExample.flatMap(([name, language]) => cuts.map(({ large, paper }) => ({ name, language, large, paper }))),
)(
  "the last page of $name in $language is filled by a third: $paper, large $large",
  async ({ name, language, large, paper }) => {
    if (paper === "label") return;
    const [pdf] = whole(await render(handoutOf(factsOf(name), language), house, { paper, large, formats: ["pdf"] }));
    const { out } = tool("pdftotext", ["-bbox-layout", "FILE", "-"], pdf?.bytes ?? new Uint8Array());
    const last = out.split("<page ").at(-1) ?? "";
    const height = Number(/height="([\d.]+)"/.exec(last)?.[1]);
    const ends = [...last.matchAll(/<block [^>]*yMax="([\d.]+)"/g)].map(([, y]) => Number(y));
    // The running line at the foot stands under them.
    const end = Math.max(...ends.filter((y) => y < height - 60));
    expect(end).toBeGreaterThan(78 + (height - 147) / 3 - 8);
  },
);

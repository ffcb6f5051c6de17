import { expect, test } from "vitest";
import type { Piece } from "#render/pdf/piece.js";
import { placeUrgent } from "#render/pdf/place-urgent.js";

const frame = { first: 0, other: 0, bottom: 100 };
const piece = (height: number, before: number): Piece =>
  ({ what: "item", x: 0, width: 10, height, before, keep: false, marks: [] }) as unknown as Piece;
const placed = (urgent: Piece[]) =>
  placeUrgent(urgent, [piece(10, 10)], frame).map(({ page, y }) => `${page}:${Math.round(y)}`);

test("what is urgent and fits page one keeps all its white", () => {
  expect(placed([piece(20, 10), piece(20, 10), piece(20, 10)])).toEqual(["0:0", "0:30", "0:60", "0:90"]);
});

test("what would fit with less white is drawn closer, no more than it takes; the rest keeps its own", () => {
  // 80 of height and 3 x 8 of white are 4 too many; with 0.8 of the white they are 99.2.
  expect(placed([1, 2, 3, 4].map(() => piece(20, 8)))).toEqual(["0:0", "0:26", "0:53", "0:79", "1:0"]);
});

test("what no white would fit on page one is not drawn together in vain", () => {
  expect(placed([1, 2, 3, 4, 5, 6].map(() => piece(20, 10)))).toEqual([
    "0:0",
    "0:30",
    "0:60",
    "1:0",
    "1:30",
    "1:60",
    "1:90",
  ]);
});

test("what goes on after the first signs may go on to page two, and the first then stand closer on page one", () => {
  const pieces = [1, 2, 3, 4, 5, 6].map(() => piece(20, 8));
  const pages = placeUrgent(pieces, [], frame, 4).map(({ page }) => page);
  expect(pages).toEqual([0, 0, 0, 0, 1, 1]);
});

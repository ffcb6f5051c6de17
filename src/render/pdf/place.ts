import type { Piece, PlacedPiece } from "./piece.js";

export type Frame = { first: number; other: number; bottom: number };
/** Where the next piece goes. floor: the lower end of what stands beside the column. */
type Pen = { page: number; y: number; floor: number };

/**
 * Gives each piece a page and a height on it. Pieces that are kept together move to the next page together; only a group
 * taller than a page is parted, its titles last. A single piece taller than a page stays whole and runs over: the caller must look.
 */
export function place(pieces: Piece[], frame: Frame): PlacedPiece[] {
  const placed: PlacedPiece[] = [];
  let pen: Pen = { page: 0, y: frame.first, floor: frame.first };
  const put = (group: Piece[]): boolean => {
    const here = settle(group, pen, topOf(pen.page, frame));
    if (here.bottom > frame.bottom) return false;
    placed.push(...here.placed);
    pen = here.pen;
    return true;
  };
  const turn = (): void => {
    pen = { page: pen.page + 1, y: frame.other, floor: frame.other };
  };
  const atTop = (): boolean => pen.y === topOf(pen.page, frame) && pen.floor === pen.y;
  const force = (piece: Piece): void => {
    const here = settle([piece], pen, topOf(pen.page, frame));
    placed.push(...here.placed);
    pen = here.pen;
  };
  for (const group of groupsOf(pieces)) {
    if (put(group)) continue;
    if (!atTop()) turn();
    if (put(group)) continue;
    for (const part of groupsOf(loosened(group))) {
      if (put(part)) continue;
      if (!atTop()) turn();
      if (put(part)) continue;
      for (const piece of part) {
        if (put([piece])) continue;
        if (!atTop()) turn();
        if (!put([piece])) force(piece);
      }
    }
  }
  return placed;
}

const topOf = (page: number, frame: Frame): number => (page === 0 ? frame.first : frame.other);

/** Only titles and the heads of tables still hold on to what they head, and items to their lines: for a group that no page can hold. */
const loosened = (group: Piece[]): Piece[] =>
  group.map((piece, index) => {
    const heads = piece.what === "rule" || piece.what === "heading" || piece.what === "caption";
    return { ...piece, keep: piece.keep && (heads || piece.bond || group[index - 1]?.what === "heading") };
  });

function groupsOf(pieces: Piece[]): Piece[][] {
  const groups: Piece[][] = [];
  let open: Piece[] = [];
  for (const piece of pieces) {
    open.push(piece);
    if (!piece.keep) {
      groups.push(open);
      open = [];
    }
  }
  return open.length > 0 ? [...groups, open] : groups;
}

function settle(group: Piece[], from: Pen, top: number): { placed: PlacedPiece[]; pen: Pen; bottom: number } {
  const placed: PlacedPiece[] = [];
  let { y, floor } = from;
  const { page } = from;
  for (const piece of group) {
    const opens = y === top && floor === top;
    if (opens && page > 0 && piece.repeat) {
      placed.push({ page, y, piece: piece.repeat, repeated: true });
      y += piece.repeat.height;
    } else if (!opens) {
      y = (piece.clear ? Math.max(y, floor) : y) + piece.before;
    }
    placed.push({ page, y, piece, repeated: false });
    if (piece.beside) floor = Math.max(floor, y + piece.height);
    else y += piece.height;
  }
  return { placed, pen: { page, y, floor }, bottom: Math.max(y, floor) };
}

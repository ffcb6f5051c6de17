import type { Direction } from "./bidi.js";
import type { Colour, Style } from "./sheet.js";
import type { Tag } from "./tag.js";

/** What a placed box is, for whoever tests a page without looking at it. */
export type What =
  | "letterhead"
  | "title"
  | "heading"
  | "line"
  | "item"
  | "caption"
  | "row"
  | "month"
  | "columns"
  | "figure"
  | "signature"
  | "rule"
  | "running";

/**
 * Something to draw. x counts from the left of the page, y from the top of the piece, both in points. tag null is an artifact:
 * paint that says nothing. A path is in its own units, scaled and moved to x, y; box is what a tagged picture fills. Words
 * run the way the page does unless they say their own direction.
 */
export type Mark =
  | {
      kind: "text";
      x: number;
      y: number;
      width: number;
      text: string;
      style: Style;
      tabular: boolean;
      direction?: Direction;
      tag: Tag | null;
    }
  /** A picture that says nothing the words beside it do not say: a logo. */
  | { kind: "image"; x: number; y: number; width: number; height: number; png: Uint8Array; tag: null }
  | { kind: "rule"; x: number; y: number; width: number; thickness: number; colour: Colour; tag: null }
  | {
      kind: "path";
      x: number;
      y: number;
      scale: number;
      path: string;
      fill: Colour | null;
      stroke: { colour: Colour; width: number; dash: number | null } | null;
      box: { x: number; y: number; width: number; height: number };
      clip: boolean;
      /** Is moved with its page's mirror image, with the line of this x in its own units, and never turned over. */
      upright?: number;
      flipped?: true;
      tag: Tag | null;
    }
  /** An element that is there although nothing is drawn in it: an empty cell. */
  | { kind: "empty"; tag: Tag };

/** A box that is never split. */
export type Piece = {
  what: What;
  x: number;
  width: number;
  height: number;
  /** Space above, dropped at the top of a page. */
  before: number;
  /** Stays on the page of the piece after it. */
  keep: boolean;
  /** Stays there also in a group that no page can hold. */
  bond?: true;
  /** What follows starts beside it, not under it. */
  beside?: true;
  /** Starts under everything before it, also under what stands beside. */
  clear?: true;
  /** Printed again, as an artifact, when this piece opens a page: a table's head. */
  repeat?: Piece;
  /** The bookmark that leads here. */
  bookmark?: { title: string; depth: number };
  marks: Mark[];
};

/** A piece that has found its place. page counts from 0, y from the top of the page. */
export type PlacedPiece = { page: number; y: number; piece: Piece; repeated: boolean };

/** The pieces stay together on one page. */
export const together = (pieces: Piece[]): Piece[] =>
  pieces.map((piece, index) => (index < pieces.length - 1 ? { ...piece, keep: true } : piece));

/** They stay together also where much more would stay with them. */
export const bonded = (pieces: Piece[]): Piece[] =>
  together(pieces).map((piece, index) => (index < pieces.length - 1 ? { ...piece, bond: true } : piece));

/** The first piece stands this far under what is before it. */
export const spaced = (pieces: Piece[], before: number): Piece[] =>
  pieces.map((piece, index) => (index === 0 ? { ...piece, before } : piece));

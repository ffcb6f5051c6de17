import type { Inline, Paragraph } from "#handout/handout.js";
import { linePieces } from "./line-pieces.js";
import { evenLinesOf, linesOf } from "./lines.js";
import type { Piece, What } from "./piece.js";
import type { Setting } from "./setting.js";
import type { Column, Style } from "./sheet.js";
import { type Look, lookOf, spansOf } from "./spans.js";
import { type Tag, tag } from "./tag.js";

/** Words set in a column, a piece a line. */
export const wordPieces = (
  inlines: Inline[],
  look: Look,
  column: Column,
  owner: Tag,
  setting: Setting,
  what: What = "line",
): Piece[] => linePieces(linesOf(spansOf(inlines, look, owner, setting), column.width, setting), column, what);

/** A title: its lines are as even as they can be. */
export const titlePieces = (
  inlines: Inline[],
  style: Style,
  column: Column,
  owner: Tag,
  setting: Setting,
  what: What = "heading",
): Piece[] =>
  linePieces(evenLinesOf(spansOf(inlines, lookOf(style), owner, setting), column.width, setting), column, what);

export function paragraphPieces(
  { role, inlines }: Paragraph,
  weight: "urgent" | "plain",
  parent: Tag,
  setting: Setting,
): Piece[] {
  const { styles, text } = setting.sheet;
  const urgent = weight === "urgent";
  const style = role === "body" && urgent ? styles.urgent : styles[role];
  const look = urgent && role !== "small" ? { style, phone: styles.urgentPhone } : lookOf(style);
  return wordPieces(inlines, look, text, tag("P", parent), setting);
}

import type { Block, Section } from "#handout/handout.js";
import type { Piece } from "./piece.js";
import { plain } from "./words.js";

/** Lines of an opening; a longer one is something to read by itself. */
const opening = 5;
const announces = /[:\uff1a]\s*$/;

/**
 * Whether words stay with the block after them: one line under a title is not enough to stay there alone (a drawing is), nor are
 * the few that open a section of parts with titles of their own. A line or two before a list, a table or a drawing introduce it,
 * as do words that end in a colon.
 */
export function leadsOn(blocks: readonly (Block | Section)[], index: number, pieces: Piece[]): boolean {
  const [block, next] = [blocks[index], blocks[index + 1]];
  if (!next || block?.kind === "figure") return false;
  if (index === 0 && pieces.length === 1) return true;
  if (index === 0 && block?.kind === "paragraph" && next.kind === "section" && pieces.length <= opening) return true;
  if (block?.kind !== "paragraph" || pieces.length > 2) return false;
  if (block.role === "lead") return true;
  return announces.test(block.inlines.map(plain).join("")) || (next.kind !== "paragraph" && next.kind !== "section");
}

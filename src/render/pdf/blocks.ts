import type { Block, Leaf } from "#handout/handout.js";
import { columnPieces } from "./columns.js";
import { figurePieces } from "./figure.js";
import { listPieces } from "./list.js";
import { monthPieces } from "./month.js";
import { paragraphPieces } from "./paragraph.js";
import type { Piece } from "./piece.js";
import type { Setting } from "./setting.js";
import { signaturePieces } from "./signature.js";
import { tablePieces } from "./table.js";
import type { Tag } from "./tag.js";
import { undrawable } from "./undrawable.js";

type Weight = "urgent" | "plain";

/** A block as pieces, in the column of the text. */
export function blockPieces(block: Block, weight: Weight, parent: Tag, setting: Setting): Piece[] {
  if (block.kind !== "columns") return leafPieces(block, weight, parent, setting);
  return columnPieces(block, setting, (leaf, narrow) => leafPieces(leaf, weight, parent, narrow));
}

function leafPieces(block: Leaf, weight: Weight, parent: Tag, setting: Setting): Piece[] {
  switch (block.kind) {
    case "paragraph":
      return paragraphPieces(block, weight, parent, setting);
    case "list":
      return listPieces(block, weight, parent, setting);
    case "table":
      return tablePieces(block, parent, setting);
    case "month":
      return monthPieces(block, parent, setting);
    case "figure":
      return figurePieces(block, parent, setting);
    case "signature":
      return signaturePieces(block, parent, setting);
    default:
      return undrawable(block, setting);
  }
}

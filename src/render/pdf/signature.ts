import type { Inline, Signature } from "#handout/handout.js";
import { lineMarks } from "./line-pieces.js";
import { linesOf } from "./lines.js";
import { rule } from "./marks.js";
import { type Mark, type Piece, together } from "./piece.js";
import type { Setting } from "./setting.js";
import { lookOf, spansOf } from "./spans.js";
import { type Tag, tag } from "./tag.js";

/** Rules to write on, up to three side by side over the full width, each with its words underneath. */
export function signaturePieces({ lines }: Signature, parent: Tag, setting: Setting): Piece[] {
  const { full, step, large } = setting.sheet;
  const across = large ? 1 : lines.length % 3 === 0 ? 3 : 2;
  const gutter = 2 * step;
  const width = (full.width - gutter * (across - 1)) / across;
  const rows = Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
    lines.slice(row * across, (row + 1) * across),
  );
  const pieces = rows.map((row): Piece => {
    const signed = row.map((inlines, index) =>
      lineToSign(inlines, full.x + index * (width + gutter), width, parent, setting),
    );
    const height = Math.max(...signed.map(({ bottom }) => bottom));
    const marks = signed.flatMap((each) => each.marks);
    return { what: "signature", ...full, height, before: 0, keep: false, clear: true, marks };
  });
  return together(pieces);
}

function lineToSign(inlines: Inline[], x: number, width: number, parent: Tag, setting: Setting) {
  const { styles, step } = setting.sheet;
  const room = 5 * step;
  const lines = linesOf(spansOf(inlines, lookOf(styles.note), tag("P", parent), setting), width, setting);
  let bottom = room + step / 2;
  const marks = lines.flatMap((line): Mark[] => {
    const drawn = lineMarks(line, x, bottom);
    bottom += line.height;
    return drawn;
  });
  return { marks: [rule(x, room, width, 0.75, "ink"), ...marks], bottom };
}

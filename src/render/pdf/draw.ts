import type { Direction } from "./bidi.js";
import type { Faces } from "./faces.js";
import type { Kit } from "./kit.js";
import type { Mark, PlacedPiece } from "./piece.js";
import { drawRightToLeft, type EmbeddedFont, rightToLeftMark } from "./right-to-left.js";
import type { Colours, Sheet } from "./sheet.js";
import { type Structure, structureOf } from "./structure.js";
import { partsOf } from "./text-parts.js";

/** What drawing leans on. */
type Page = { sheet: Sheet; faces: Faces; direction: Direction; colours: Colours };

/** pdfkit 0.20.2 measures words anew, for links and lines under them, unless it is told; it draws neither. */
const measured: object = { textWidth: 0, wordCount: 1 };

/** Draws placed pieces, page after page; each mark goes into the content of its tag, or into an artifact. */
export function draw(kit: Kit, placed: PlacedPiece[], page: Page): void {
  const structure = structureOf(kit);
  let last = -1;
  for (const { page: on, y, piece, repeated } of placed) {
    if (on !== last) {
      structure.close();
      kit.addPage({ size: [page.sheet.width, page.sheet.height], margin: 0 });
      last = on;
    }
    const running = repeated || piece.what === "running";
    for (const mark of piece.marks) drawMark(kit, mark, y, structure, running, page);
  }
  structure.end();
}

function drawMark(kit: Kit, mark: Mark, top: number, structure: Structure, running: boolean, page: Page): void {
  if (mark.kind === "empty") {
    if (!running) structure.touch(mark.tag);
    return;
  }
  const box = boxOf(mark, top);
  if (running || mark.tag === null) structure.artifact(running ? "Pagination" : "Layout");
  else structure.into(mark.tag, mark.kind === "path" ? box : undefined);
  if (mark.kind === "text") {
    drawText(kit, mark, top, page);
    if (!running && mark.tag?.type === "Link") {
      structure.close();
      structure.link(mark.tag, box);
    }
  } else if (mark.kind === "rule") {
    kit.rect(mark.x, top + mark.y, mark.width, mark.thickness).fill(page.colours[mark.colour]);
  } else if (mark.kind === "image") {
    kit.image(Buffer.from(mark.png), mark.x, top + mark.y, { width: mark.width, height: mark.height });
  } else {
    drawPath(kit, mark, top, page.colours);
  }
}

function boxOf(mark: Exclude<Mark, { kind: "empty" }>, top: number) {
  if (mark.kind === "path") return { ...mark.box, y: top + mark.box.y };
  if (mark.kind === "image") return { x: mark.x, y: top + mark.y, width: mark.width, height: mark.height };
  if (mark.kind === "rule") return { x: mark.x, y: top + mark.y, width: mark.width, height: mark.thickness };
  const { size } = mark.style;
  return { x: mark.x, y: top + mark.y - size, width: mark.width, height: size * 1.3 };
}

function drawText(
  kit: Kit,
  mark: Extract<Mark, { kind: "text" }>,
  top: number,
  { faces, direction, colours }: Page,
): void {
  const { text, style, tabular } = mark;
  kit.fontSize(style.size).fillColor(colours[style.colour]);
  for (const part of partsOf(text, style, tabular, mark.direction ?? direction, faces)) {
    const features = part.fount.features(tabular);
    kit.font(part.fount.name);
    if (part.rightToLeft) drawRightToLeft((kit as unknown as { _font: EmbeddedFont })._font);
    kit.text(part.rightToLeft ? rightToLeftMark + part.text : part.text, mark.x + part.x, top + mark.y, {
      lineBreak: false,
      baseline: "alphabetic",
      ...measured,
      ...(features ? { features: features as never } : {}),
    });
  }
}

function drawPath(kit: Kit, mark: Extract<Mark, { kind: "path" }>, top: number, colours: Colours): void {
  const { path, fill, stroke, scale, box } = mark;
  kit.save();
  if (mark.clip) kit.rect(box.x, top + box.y, box.width, box.height).clip();
  kit.translate(mark.x, top + mark.y).scale(mark.flipped ? -scale : scale, scale);
  kit.path(path);
  if (stroke) {
    kit.lineWidth(stroke.width).lineJoin("round").strokeColor(colours[stroke.colour]);
    if (stroke.dash !== null) kit.dash(stroke.dash, { space: stroke.dash });
  }
  if (fill && stroke) kit.fillAndStroke(colours[fill], colours[stroke.colour]);
  else if (fill) kit.fill(colours[fill]);
  else if (stroke) kit.stroke();
  kit.restore();
}

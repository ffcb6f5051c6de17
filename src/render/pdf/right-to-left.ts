import type { Glyph, GlyphPosition } from "fontkit";
import { mirrored } from "./bidi.js";

/** Words that begin with this mark are shaped from right to left; it is never drawn. */
export const rightToLeftMark = "\u200f";

const joining = /\p{Script=Arabic}/u;

/** The members of pdfkit 0.20.2's embedded font that its types do not know; a run is one of ./shaper.ts. */
type Run = { glyphs: Glyph[]; positions: GlyphPosition[]; direction: string; told: number[][] };
export type EmbeddedFont = {
  scale: number;
  subset: { glyphs: number[] };
  widths: number[];
  unicode: number[][];
  layoutRun: (text: string) => Run;
  encode: (text: string, features?: string[]) => [string[], GlyphPosition[]];
};
const taught = new WeakSet<EmbeddedFont>();
type Shaped = { glyph: Glyph; position: GlyphPosition; says: number[] };

/**
 * Teaches a font of pdfkit to draw words that run from right to left: shaped by fontkit, brackets mirrored, and each glyph
 * standing for exactly the letters it was made from.
 */
export function drawRightToLeft(embedded: EmbeddedFont): void {
  if (taught.has(embedded)) return;
  taught.add(embedded);
  const leftToRight = embedded.encode.bind(embedded);
  const known = new Map<string, number>();
  const idOf = ({ glyph, says }: Shaped): number => {
    const key = `${glyph.id}:${says}`;
    const id = known.get(key) ?? embedded.subset.glyphs.push(glyph.id) - 1;
    known.set(key, id);
    embedded.widths[id] = glyph.advanceWidth * embedded.scale;
    embedded.unicode[id] = says;
    return id;
  };
  embedded.encode = (text, features) => {
    if (!text.startsWith(rightToLeftMark)) return leftToRight(text, features);
    const shaped = shape(text.slice(rightToLeftMark.length), embedded);
    return [shaped.map((each) => idOf(each).toString(16).padStart(4, "0")), shaped.map(({ position }) => position)];
  };
}

/**
 * From left to right as they are drawn. Whoever takes the words out turns them round again: so letters that share a glyph
 * stand in the order they are seen in, and a bracket says what was written, not how it looks.
 */
function shape(text: string, embedded: EmbeddedFont): Shaped[] {
  const run = embedded.layoutRun(joining.test(text) ? mirrored(text) : [...mirrored(text)].reverse().join(""));
  const letters = run.direction === "rtl" ? run.told.toReversed() : run.told;
  return run.glyphs.flatMap((glyph, index): Shaped[] => {
    const position = run.positions[index];
    const says = (letters[index] ?? glyph.codePoints).toReversed().map(written);
    return position ? [{ glyph, position, says }] : [];
  });
}

const written = (code: number): number => mirrored(String.fromCodePoint(code)).codePointAt(0) ?? code;

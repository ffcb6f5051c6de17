import { create, type Font } from "fontkit";

export type Weight = "regular" | "bold";
export type FontBytes = Record<Weight, Uint8Array>;
/** width: in points. lacks: the characters it has no shape for. */
export type Face = {
  font: Font;
  width: (text: string, size: number, tabular?: boolean) => number;
  lacks: (text: string) => string[];
};
export type Faces = Record<Weight, Face>;

const parsed = new WeakMap<Uint8Array, Font>();

/** The two weights, ready to measure with. Throws what fontkit throws when the bytes are not one font. */
export const facesOf = (bytes: FontBytes): Faces => ({ regular: faceOf(bytes.regular), bold: faceOf(bytes.bold) });

function faceOf(bytes: Uint8Array): Face {
  const font = fontOf(bytes);
  const widths = new Map<string, number>();
  const chunkWidth = (chunk: string, tabular: boolean): number => {
    const key = tabular ? `${chunk}\t` : chunk;
    let width = widths.get(key);
    if (width === undefined) {
      width = font.layout(chunk, tabular ? ["tnum"] : undefined).advanceWidth / font.unitsPerEm;
      widths.set(key, width);
    }
    return width;
  };
  return {
    font,
    // pdfkit shapes word by word, each with its space: measured the same way, a line is as wide as it is drawn.
    width: (text, size, tabular = false) =>
      size * (tabular ? [text] : text.split(/(?<= )/)).reduce((sum, chunk) => sum + chunkWidth(chunk, tabular), 0),
    lacks: (text) => [...text].filter((character) => !font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)),
  };
}

/**
 * A font is parsed once. fontkit keeps in its glyphs the characters they first stood for, so a font used before would leave
 * its traces in this document's character map: each document starts with none.
 */
function fontOf(bytes: Uint8Array): Font {
  const known = parsed.get(bytes);
  const font = known ?? (create(bytes as Buffer) as Font);
  if (!known) parsed.set(bytes, font);
  (font as unknown as { _glyphs: object })._glyphs = {};
  return font;
}

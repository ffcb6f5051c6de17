import { create, type Font, type Glyph, type GlyphPosition, type GlyphRun } from "fontkit";

/** What fontkit must be told of a font, by OpenType's names: { tnum: true } for figures of one width. */
export type Features = Record<string, boolean>;

/** A word as a font draws it. told: the letters each glyph was made from, as the word was read. width: in units of the font. */
type Shape = Pick<GlyphRun, "glyphs" | "positions"> & { direction: string; told: number[][]; width: number };

/** The members of fontkit 2.0.4 that its types do not know. */
type Hidden = {
  _glyphs: object;
  _layoutEngine: { engine: { substitute: (run: object) => void; glyphInfos?: { codePoints?: number[] }[] } | null };
};

/** So many words are kept of each way of setting them; then all are let go. A handout has about a thousand. */
const mostWords = 5000;

/** A font that is parsed once and shapes each word once, whatever document it is for: most words of one are in the next. */
export type Shaper = {
  /** For pdfkit, which may do with a run of glyphs what it likes. */
  font: Font;
  /** In points at a size of one. */
  width: (text: string, features: Features | undefined) => number;
  glyphs: (text: string) => readonly Glyph[];
  has: (code: number) => boolean;
};

/** @throws what fontkit throws when the bytes are not one font. */
export function shaperOf(bytes: Uint8Array): Shaper {
  const font = create(bytes as Buffer) as Font;
  let told: (() => number[][]) | undefined;
  const kept = new Map<string, Map<string, Shape>>();
  const own = new Map<string, Glyph>();
  const known = new Map<number, boolean>();

  const shape = (text: string, features: Features | undefined): Shape => {
    const way = features ? JSON.stringify(features) : "";
    const words = kept.get(way) ?? new Map<string, Shape>();
    kept.set(way, words);
    const before = words.get(text);
    if (before) return before;
    // A glyph remembers the letters it first stood for: each word begins with none, or it would tell of those before it.
    (font as unknown as Hidden)._glyphs = {};
    told ??= tellLetters(font);
    const run = font.layout(text, features as never) as GlyphRun & { direction: string };
    const { direction, positions, advanceWidth: width } = run;
    const shaped = { glyphs: run.glyphs.map(same), positions, direction, told: told(), width };
    if (words.size >= mostWords) words.clear();
    words.set(text, shaped);
    return shaped;
  };
  /** One glyph for all words in which it stands for the same letters. */
  const same = (glyph: Glyph): Glyph => {
    const key = `${glyph.id} ${glyph.codePoints}`;
    const first = own.get(key) ?? glyph;
    if (first === glyph) own.set(key, glyph);
    return first;
  };
  const layout = (text: string, features?: Features) => new Run(shape(text, features));

  return {
    font: Object.create(font, { layout: { value: layout } }) as Font,
    width: (text, features) => shape(text, features).width / font.unitsPerEm,
    glyphs: (text) => shape(text, undefined).glyphs,
    has(code) {
      const seen = known.get(code) ?? font.hasGlyphForCodePoint(code);
      known.set(code, seen);
      return seen;
    },
  };
}

/** A word's glyphs in places of their own: pdfkit counts them out in units of a page. */
class Run {
  readonly glyphs: Glyph[];
  readonly positions: GlyphPosition[];
  readonly direction: string;
  readonly told: number[][];
  constructor({ direction, glyphs, positions, told }: Shape) {
    this.glyphs = glyphs;
    this.positions = positions.map((position) => ({ ...position }));
    this.direction = direction;
    this.told = told;
  }
  get advanceWidth(): number {
    return this.positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
  }
}

/** fontkit forgets which letters a glyph came from when it puts several into one; here it is asked while it knows. */
function tellLetters(font: Font): () => number[][] {
  const { engine } = (font as unknown as Hidden)._layoutEngine;
  let last: number[][] = [];
  if (engine) {
    const substitute = engine.substitute.bind(engine);
    engine.substitute = (run) => {
      substitute(run);
      last = (engine.glyphInfos ?? []).map(({ codePoints }) => codePoints ?? []);
    };
  }
  return () => last;
}

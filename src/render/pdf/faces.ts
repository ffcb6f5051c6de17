import { create, type Font } from "fontkit";
import { directionMarks } from "./bidi.js";

export type Weight = "regular" | "bold";
/** One family: the bytes of two TrueType files. */
export type FontBytes = Record<Weight, Uint8Array>;
/** One font file, by the name it is drawn with. features: what fontkit must be told of it, for figures of one width or not. */
export type Fount = {
  name: string;
  font: Font;
  has: (text: string) => boolean;
  features: (tabular: boolean) => Features | undefined;
};
type Features = Record<string, boolean>;
/**
 * A weight of all families. width: in points. lacks: the characters no family has a shape for. runs: words by the font each
 * is drawn with, in the order they are read.
 */
export type Face = {
  founts: Fount[];
  width: (text: string, size: number, tabular?: boolean) => number;
  lacks: (text: string) => string[];
  runs: (text: string) => { fount: Fount; text: string }[];
};
export type Faces = Record<Weight, Face>;

const parsed = new WeakMap<Uint8Array, Font>();

/**
 * The two weights, ready to measure with. families: the first that has most of the words is the page's own; what it lacks is
 * drawn with the next that has it. Throws what fontkit throws when the bytes are not one font.
 */
export function facesOf(families: readonly FontBytes[], words: string): Faces {
  const inOrder = preferred(families, words);
  return { regular: faceOf(inOrder, "regular"), bold: faceOf(inOrder, "bold") };
}

/** A family is the page's own if it has nearly all its letters: a name in another script does not change the page. */
const nearlyAll = 0.95;

function preferred(families: readonly FontBytes[], words: string): readonly FontBytes[] {
  const counts = new Map<number, number>();
  let all = 0;
  for (const letter of words.replace(directionMarks, "").replace(/\s/g, "")) {
    const code = letter.codePointAt(0) ?? 0;
    counts.set(code, (counts.get(code) ?? 0) + 1);
    all++;
  }
  let [own, most] = [families[0], -1];
  for (const family of families) {
    const font = fontOf(family.regular);
    const had = [...counts].reduce((sum, [code, count]) => sum + (font.hasGlyphForCodePoint(code) ? count : 0), 0);
    if (had > most) [own, most] = [family, had];
    if (had >= all * nearlyAll) break;
  }
  return own ? [own, ...families.filter((family) => family !== own)] : [];
}

const clusters = new Intl.Segmenter(undefined, { granularity: "grapheme" });

function faceOf(families: readonly FontBytes[], weight: Weight): Face {
  const founts = families.map((family, index): Fount => {
    const font = fontOf(family[weight]);
    return {
      name: `${weight}-${index}`,
      font,
      has: (text) => [...text].every((character) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)),
      features: featuresOf(font),
    };
  });
  const [own] = founts;
  if (!own) throw new Error("no fonts");

  /** Letters and their marks stay together; the same font goes on as long as it can. */
  const runs = (text: string): { fount: Fount; text: string }[] => {
    if (own.has(text)) return [{ fount: own, text }];
    const found: { fount: Fount; text: string }[] = [];
    for (const { segment } of clusters.segment(text)) {
      const last = found.at(-1);
      const goesOn = last && segment.trim() === "" && last.fount.has(segment);
      const fount = goesOn ? last.fount : (founts.find((each) => each.has(segment)) ?? own);
      if (last?.fount === fount) last.text += segment;
      else found.push({ fount, text: segment });
    }
    return found;
  };
  const widths = new Map<string, number>();
  const chunkWidth = ({ name, font, features }: Fount, chunk: string, tabular: boolean): number => {
    const key = `${name}${tabular ? "\t" : " "}${chunk}`;
    let width = widths.get(key);
    if (width === undefined) {
      width = font.layout(chunk, features(tabular) as never).advanceWidth / font.unitsPerEm;
      widths.set(key, width);
    }
    return width;
  };
  // pdfkit shapes word by word, each with its space: measured the same way, a line is as wide as it is drawn.
  const runWidth = ({ fount, text }: { fount: Fount; text: string }, tabular: boolean): number =>
    (tabular ? [text] : text.split(/(?<= )/)).reduce((sum, chunk) => sum + chunkWidth(fount, chunk, tabular), 0);
  return {
    founts,
    runs,
    width: (text, size, tabular = false) =>
      size * runs(text.replace(directionMarks, "")).reduce((sum, run) => sum + runWidth(run, tabular), 0),
    lacks: (text) =>
      [...text.replace(directionMarks, "")].filter((character) => !founts.some((fount) => fount.has(character))),
  };
}

/**
 * Some fonts draw a letter as a plain one and a mark, and fontkit forgets what they stand for: a reader would find "o" and a
 * dot where "ọ" was written. Words are in composed letters, so such a font is told to leave them whole.
 */
function featuresOf(font: Font): Fount["features"] {
  const parts = font.hasGlyphForCodePoint(0x1ecd) && font.layout("ọ").glyphs.length > 1;
  forget(font);
  const whole: Features | undefined = parts ? { ccmp: false } : undefined;
  return (tabular) => (tabular ? { ...whole, tnum: true } : whole);
}

/**
 * A font is parsed once. fontkit keeps in its glyphs the characters they first stood for, so a font used before would leave
 * its traces in this document's character map: each document starts with none.
 */
function fontOf(bytes: Uint8Array): Font {
  const known = parsed.get(bytes);
  const font = known ?? (create(bytes as Buffer) as Font);
  if (!known) parsed.set(bytes, font);
  forget(font);
  return font;
}

const forget = (font: Font): void => {
  (font as unknown as { _glyphs: object })._glyphs = {};
};

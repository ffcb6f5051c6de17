import type { Font } from "fontkit";
import { directionMarks } from "./bidi.js";
import { type Features, type Shaper, shaperOf } from "./shaper.js";

export type Weight = "regular" | "bold";
/** One family: the bytes of two TrueType files. */
export type FontBytes = Record<Weight, Uint8Array>;
/** One font file, by the name it is drawn with. features: what fontkit must be told of it, for figures of one width or not. */
export type Fount = {
  name: string;
  font: Font;
  has: (text: string) => boolean;
  features: (tabular: boolean) => Features | undefined;
  /** In points at a size of one, of a word as pdfkit draws it. */
  width: (word: string, tabular: boolean) => number;
};
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

/** A font is parsed once. */
const shapers = new WeakMap<Uint8Array, Shaper>();

function shaperFor(bytes: Uint8Array): Shaper {
  const shaper = shapers.get(bytes) ?? shaperOf(bytes);
  shapers.set(bytes, shaper);
  return shaper;
}

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
    const { has } = shaperFor(family.regular);
    const had = [...counts].reduce((sum, [code, count]) => sum + (has(code) ? count : 0), 0);
    if (had > most) [own, most] = [family, had];
    if (had >= all * nearlyAll) break;
  }
  return own ? [own, ...families.filter((family) => family !== own)] : [];
}

const clusters = new Intl.Segmenter(undefined, { granularity: "grapheme" });

function faceOf(families: readonly FontBytes[], weight: Weight): Face {
  const founts = families.map((family, index): Fount => {
    const shaper = shaperFor(family[weight]);
    const features = featuresOf(shaper);
    return {
      name: `${weight}-${index}`,
      font: shaper.font,
      has: (text) => hasAll(shaper, text),
      features,
      width: (word, tabular) => shaper.width(word, features(tabular)),
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
  // pdfkit shapes word by word, each with its space: measured the same way, a line is as wide as it is drawn.
  const runWidth = ({ fount, text }: { fount: Fount; text: string }, tabular: boolean): number =>
    (tabular ? [text] : text.split(/(?<= )/)).reduce((sum, word) => sum + fount.width(word, tabular), 0);
  const measured = { plain: new Map<string, number>(), tabular: new Map<string, number>() };
  const widthAtOne = (text: string, tabular: boolean): number => {
    const widths = tabular ? measured.tabular : measured.plain;
    const known = widths.get(text);
    if (known !== undefined) return known;
    const width = runs(text.replace(directionMarks, "")).reduce((sum, run) => sum + runWidth(run, tabular), 0);
    widths.set(text, width);
    return width;
  };
  return {
    founts,
    runs,
    width: (text, size, tabular = false) => size * widthAtOne(text, tabular),
    lacks: (text) =>
      [...text.replace(directionMarks, "")].filter((character) => !founts.some((fount) => fount.has(character))),
  };
}

function hasAll({ has }: Shaper, text: string): boolean {
  for (const character of text) if (!has(character.codePointAt(0) ?? 0)) return false;
  return true;
}

/**
 * Some fonts draw a letter as a plain one and a mark, and fontkit forgets what they stand for: a reader would find "o" and a
 * dot where "ọ" was written. Words are in composed letters, so such a font is told to leave them whole.
 */
function featuresOf({ glyphs, has }: Shaper): Fount["features"] {
  let known: { plain: Features | undefined; tabular: Features } | undefined;
  const look = () => {
    const parts = has(0x1ecd) && glyphs("ọ").length > 1;
    const plain = parts ? { ccmp: false } : undefined;
    return { plain, tabular: { ...plain, tnum: true } };
  };
  return (wanted) => {
    known ??= look();
    return wanted ? known.tabular : known.plain;
  };
}

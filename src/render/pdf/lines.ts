import LineBreaker from "linebreak";
import { type Direction, fromStart, levelsOf, stretchesOf } from "./bidi.js";
import type { Setting } from "./setting.js";
import type { Style } from "./sheet.js";
import type { Span } from "./spans.js";
import type { Tag } from "./tag.js";

/** A run of a line: x from the edge where lines begin, in points. */
export type Run =
  | {
      kind: "text";
      x: number;
      width: number;
      text: string;
      style: Style;
      tabular: boolean;
      direction: Direction;
      tag: Tag;
    }
  | { kind: "tick"; x: number; width: number; style: Style; tag: Tag };
/** baseline: from the line's top. */
export type Line = { runs: Run[]; width: number; height: number; baseline: number };
export type Align = "start" | "center" | "end";

/** A slice of one span; a word is one or more of them. at: where in the words of the paragraph it begins. */
type Slice = { span: Span; text: string; at: number };
/** width: with the spaces at its end; inked: without them, as they hang over the edge of the column. */
type Word = { slices: Slice[]; width: number; inked: number };

/** A column measured to fit its widest words must fit them, whatever the order of adding up. */
const slack = 0.01;

const object = "\uFFFC";
const textOf = (span: Span): string => (span.kind === "text" ? span.text : object);

/** Breaks spans into lines no wider than width, at the breaks Unicode allows; a word too long for a line is cut between letters. */
export function linesOf(spans: Span[], width: number, setting: Setting, asked: Align = "start"): Line[] {
  const align = sideOf(asked, spans, setting);
  const lines: Slice[][][] = [];
  let line: Slice[][] = [];
  let filled = 0;
  for (const word of wordsOf(spans, setting).flatMap((each) => fitting(each, width, setting))) {
    const air = airBetween(line.at(-1), word.slices);
    if (line.length > 0 && filled + air + word.inked > width + slack) {
      lines.push(line);
      line = [word.slices];
      filled = word.width;
    } else {
      line.push(word.slices);
      filled += air + word.width;
    }
  }
  if (line.length > 0) lines.push(line);
  const levels = levelsOf(spans.map(textOf).join(""), setting.direction);
  return lines.map((words) => finished(joined(words.flat()), width, align, setting, levels));
}

/** Figures run from left to right on every page, and stand under each other by their right ends. */
const sideOf = (align: Align, spans: Span[], { direction }: Setting): Align =>
  align === "end" && direction === "rtl" && spans.some((span) => span.kind === "text" && span.tabular)
    ? "start"
    : align;

/** The same number of lines, as even as they can be: for titles and the heads of tables. */
export function evenLinesOf(spans: Span[], width: number, setting: Setting, align: Align = "start"): Line[] {
  const count = linesOf(spans, width, setting).length;
  if (count < 2) return linesOf(spans, width, setting, align);
  let [tooNarrow, enough] = [Math.min(extentOf(spans, setting).least, width), width];
  if (linesOf(spans, tooNarrow, setting).length === count) enough = tooNarrow;
  while (enough - tooNarrow > 2) {
    const middle = (tooNarrow + enough) / 2;
    if (linesOf(spans, middle, setting).length > count) tooNarrow = middle;
    else enough = middle;
  }
  const shift = { start: 0, center: (width - enough) / 2, end: width - enough }[sideOf(align, spans, setting)];
  return linesOf(spans, enough, setting, align).map((line) => ({
    ...line,
    runs: line.runs.map((run) => ({ ...run, x: run.x + shift })),
  }));
}

/** The narrowest column that needs no word cut, and the width of everything on one line. */
export function extentOf(spans: Span[], setting: Setting): { least: number; most: number } {
  const words = wordsOf(spans, setting);
  return {
    least: Math.max(0, ...words.map(({ inked }) => inked)),
    most: widthOf(trimmed(joined(words.flatMap(({ slices }) => slices))), setting),
  };
}

/** The same words are set in several widths until one fits: they are found and measured once. */
const known = new WeakMap<Span[], Word[]>();

function wordsOf(spans: Span[], setting: Setting): Word[] {
  const words = known.get(spans) ?? brokenOf(spans).map((slices) => measured(slices, setting));
  known.set(spans, words);
  return words;
}

function measured(slices: Slice[], setting: Setting): Word {
  const width = widthOf(slices, setting);
  const inked = trimmed(slices);
  return { slices, width, inked: inked === slices ? width : widthOf(inked, setting) };
}

/** Cut at the breaks Unicode allows. */
function brokenOf(spans: Span[]): Slice[][] {
  const starts: number[] = [];
  let length = 0;
  for (const span of spans) {
    starts.push(length);
    length += textOf(span).length;
  }
  const insideWhole = (position: number): boolean =>
    spans.some((span, index) => {
      const start = starts[index] ?? 0;
      return span.kind === "text" && span.whole && position > start && position < start + span.text.length;
    });
  const breaker = new LineBreaker(spans.map(textOf).join(""));
  const words: Slice[][] = [];
  let from = 0;
  for (let next = breaker.nextBreak(); next; next = breaker.nextBreak()) {
    const to = next.position;
    if (to < length && insideWhole(to)) continue;
    const word = spans.flatMap((span, index): Slice[] => {
      const start = starts[index] ?? 0;
      const text = textOf(span).slice(Math.max(0, from - start), Math.max(0, to - start));
      return text === "" ? [] : [{ span, text, at: Math.max(from, start) }];
    });
    if (word.length > 0) words.push(word);
    from = to;
  }
  return words;
}

const sliceWidth = ({ span, text }: Slice, setting: Setting): number =>
  span.kind === "tick" ? span.size : setting.width(text, span.style, span.tabular);

const widthOf = (slices: Slice[], setting: Setting): number =>
  slices.reduce((sum, slice, index) => sum + sliceWidth(slice, setting) + airAfter(slice, slices[index + 1]), 0);

const airBetween = (one: Slice[] | undefined, next: Slice[]): number => {
  const last = one?.at(-1);
  return last ? airAfter(last, next[0]) : 0;
};

/** Between a box to tick and the words after it. */
const airAfter = ({ span }: Slice, next: Slice | undefined): number =>
  span.kind === "tick" && next ? span.size / 4 : 0;

/** Without the spaces at its end, which hang over the edge of the column. */
function trimmed(slices: Slice[]): Slice[] {
  const last = slices.at(-1);
  if (last?.span.kind !== "text") return slices;
  const text = last.text.replace(/ +$/, "");
  if (text === last.text) return slices;
  const rest = slices.slice(0, -1);
  return text === "" ? trimmed(rest) : [...rest, { ...last, text }];
}

const letters = new Intl.Segmenter(undefined, { granularity: "grapheme" });

/** A word as it is, or cut into parts that each fit. */
function fitting(word: Word, width: number, setting: Setting): Word[] {
  if (word.inked <= width + slack) return [word];
  const parts: Slice[][] = [];
  let part: Slice[] = [];
  for (const { span, text, at } of word.slices) {
    for (const { segment, index } of letters.segment(text)) {
      const letter = { span, text: segment, at: at + index };
      const longer = joined([...part, letter]);
      if (part.length > 0 && widthOf(trimmed(longer), setting) > width) {
        parts.push(part);
        part = [letter];
      } else {
        part = longer;
      }
    }
  }
  return [...parts, part].map((slices) => measured(slices, setting));
}

/** Neighbouring slices of one span as one. */
function joined(slices: Slice[]): Slice[] {
  const out: Slice[] = [];
  for (const slice of slices) {
    const last = out.at(-1);
    if (last && last.span === slice.span && slice.span.kind === "text") {
      out[out.length - 1] = { ...last, text: last.text + slice.text };
    } else {
      out.push(slice);
    }
  }
  return out;
}

function finished(line: Slice[], width: number, align: Align, setting: Setting, levels: Uint8Array | null): Line {
  const used = widthOf(trimmed(line), setting);
  const spare = Math.max(0, width - used);
  const slices = levelled(line, setting, levels);
  const places = placesOf(slices, setting, align === "start" ? 0 : align === "end" ? spare : spare / 2);
  const runs = slices.map(({ slice, level }, index): Run => {
    const { span, text } = slice;
    const run = { x: places[index] ?? 0, width: sliceWidth(slice, setting), style: span.style, tag: span.tag };
    const direction = level % 2 === 1 ? "rtl" : "ltr";
    return span.kind === "tick"
      ? { kind: "tick", ...run }
      : { kind: "text", ...run, text, tabular: span.tabular, direction };
  });
  const height = Math.max(...line.map(({ span }) => heightOf(span)));
  return { runs, width: used, height, baseline: baselineOf(height) };
}

type Levelled = { slice: Slice; level: number };

/** Slices of one level each; spaces at the end of a line run the way the page does (UAX #9, rule L1). */
function levelled(line: Slice[], { direction }: Setting, levels: Uint8Array | null): Levelled[] {
  if (!levels) return line.map((slice) => ({ slice, level: 0 }));
  const base = direction === "rtl" ? 1 : 0;
  return line.flatMap((slice, nth) => {
    const words = nth === line.length - 1 ? slice.text.trimEnd() : slice.text;
    let { at } = slice;
    const stretches = [...stretchesOf(words, levels, at), { text: slice.text.slice(words.length), level: base }];
    return stretches.flatMap(({ text, level }): Levelled[] => {
      const one = { slice: { ...slice, text, at }, level };
      at += text.length;
      return text === "" ? [] : [one];
    });
  });
}

/** How far from the edge where lines begin each slice stands, in the order of reading. */
function placesOf(slices: Levelled[], setting: Setting, from: number): number[] {
  const places: number[] = [];
  let x = from;
  const levels = slices.map(({ level }) => level);
  for (const index of fromStart(levels, setting.direction)) {
    const one = slices[index];
    if (!one) continue;
    places[index] = x;
    x += sliceWidth(one.slice, setting) + airAfter(one.slice, slices[index + 1]?.slice);
  }
  return places;
}

/** A box to tick needs air above and below for a pen. */
const heightOf = (span: Span): number =>
  span.kind === "tick" ? Math.max(span.style.leading, span.size * 1.3) : span.style.leading;

/** Lines of one height have one baseline, whatever the size of their type: titles beside text stand level with it. */
export const baselineOf = (height: number): number => height * 0.74;

import LineBreaker from "linebreak";
import type { Setting } from "./setting.js";
import type { Style } from "./sheet.js";
import type { Span } from "./spans.js";
import type { Tag } from "./tag.js";

/** A run of a line: x from the line's start, in points. */
export type Run =
  | { kind: "text"; x: number; width: number; text: string; style: Style; tabular: boolean; tag: Tag }
  | { kind: "tick"; x: number; width: number; style: Style; tag: Tag };
/** baseline: from the line's top. */
export type Line = { runs: Run[]; width: number; height: number; baseline: number };
export type Align = "start" | "center" | "end";

/** A slice of one span; a word is one or more of them. */
type Slice = { span: Span; text: string };
type Word = Slice[];

/** A column measured to fit its widest words must fit them, whatever the order of adding up. */
const slack = 0.01;

const object = "\uFFFC";
const textOf = (span: Span): string => (span.kind === "text" ? span.text : object);

/** Breaks spans into lines no wider than width, at the breaks Unicode allows; a word too long for a line is cut between letters. */
export function linesOf(spans: Span[], width: number, setting: Setting, align: Align = "start"): Line[] {
  const lines: Word[][] = [];
  let line: Word[] = [];
  let filled = 0;
  for (const word of wordsOf(spans).flatMap((each) => fitting(each, width, setting))) {
    const air = airBetween(line.at(-1), word);
    if (line.length > 0 && filled + air + widthOf(trimmed(word), setting) > width + slack) {
      lines.push(line);
      line = [word];
      filled = widthOf(word, setting);
    } else {
      line.push(word);
      filled += air + widthOf(word, setting);
    }
  }
  if (line.length > 0) lines.push(line);
  return lines.map((words) => finished(joined(words.flat()), width, align, setting));
}

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
  const shift = { start: 0, center: (width - enough) / 2, end: width - enough }[align];
  return linesOf(spans, enough, setting, align).map((line) => ({
    ...line,
    runs: line.runs.map((run) => ({ ...run, x: run.x + shift })),
  }));
}

/** The narrowest column that needs no word cut, and the width of everything on one line. */
export function extentOf(spans: Span[], setting: Setting): { least: number; most: number } {
  const words = wordsOf(spans);
  return {
    least: Math.max(0, ...words.map((word) => widthOf(trimmed(word), setting))),
    most: widthOf(trimmed(joined(words.flat())), setting),
  };
}

function wordsOf(spans: Span[]): Word[] {
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
  const words: Word[] = [];
  let from = 0;
  for (let next = breaker.nextBreak(); next; next = breaker.nextBreak()) {
    const to = next.position;
    if (to < length && insideWhole(to)) continue;
    const word = spans.flatMap((span, index): Slice[] => {
      const start = starts[index] ?? 0;
      const text = textOf(span).slice(Math.max(0, from - start), Math.max(0, to - start));
      return text === "" ? [] : [{ span, text }];
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

const airBetween = (one: Word | undefined, next: Word): number => {
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
  return text === "" ? trimmed(rest) : [...rest, { span: last.span, text }];
}

const letters = new Intl.Segmenter(undefined, { granularity: "grapheme" });

/** A word as it is, or cut into parts that each fit. */
function fitting(word: Word, width: number, setting: Setting): Word[] {
  if (widthOf(trimmed(word), setting) <= width + slack) return [word];
  const parts: Word[] = [];
  let part: Word = [];
  for (const { span, text } of word) {
    for (const { segment } of letters.segment(text)) {
      const longer = joined([...part, { span, text: segment }]);
      if (part.length > 0 && widthOf(trimmed(longer), setting) > width) {
        parts.push(part);
        part = [{ span, text: segment }];
      } else {
        part = longer;
      }
    }
  }
  return [...parts, part];
}

/** Neighbouring slices of one span as one. */
function joined(slices: Slice[]): Slice[] {
  const out: Slice[] = [];
  for (const slice of slices) {
    const last = out.at(-1);
    if (last && last.span === slice.span && slice.span.kind === "text") {
      out[out.length - 1] = { span: last.span, text: last.text + slice.text };
    } else {
      out.push(slice);
    }
  }
  return out;
}

function finished(slices: Slice[], width: number, align: Align, setting: Setting): Line {
  const used = widthOf(trimmed(slices), setting);
  const spare = Math.max(0, width - used);
  let x = align === "start" ? 0 : align === "end" ? spare : spare / 2;
  const runs = slices.map((slice, index): Run => {
    const { span, text } = slice;
    const run = { x, width: sliceWidth(slice, setting), style: span.style, tag: span.tag };
    x += run.width + airAfter(slice, slices[index + 1]);
    return span.kind === "tick" ? { kind: "tick", ...run } : { kind: "text", ...run, text, tabular: span.tabular };
  });
  const height = Math.max(...slices.map(({ span }) => heightOf(span)));
  return { runs, width: used, height, baseline: baselineOf(height) };
}

/** A box to tick needs air above and below for a pen. */
const heightOf = (span: Span): number =>
  span.kind === "tick" ? Math.max(span.style.leading, span.size * 1.3) : span.style.leading;

/** Lines of one height have one baseline, whatever the size of their type: titles beside text stand level with it. */
export const baselineOf = (height: number): number => height * 0.74;

import type { Cell, Table } from "#handout/handout.js";
import { extentOf } from "./lines.js";
import type { Setting } from "./setting.js";
import type { Column, Style } from "./sheet.js";
import { lookOf, spansOf, strongOf } from "./spans.js";
import { tag } from "./tag.js";

/** A table, or a part of a wide one: which of its columns stand where, in what size. */
export type Shape = { columns: { index: number; x: number; width: number }[]; column: Column; style: Style };

/**
 * What a column asks for. short: the same with short cells on one line. most: its widest cell on one
 * line; the words of the head may wrap, and do not where there is room: head is their width on one line. stretch: it is
 * written in. figures: it holds amounts, aligned at their end. */
type Need = { least: number; short: number; most: number; head: number; stretch: boolean; figures: boolean };

/**
 * How a table stands on the page: in the column of the text, else over the full width, else in smaller type, else in parts
 * under each other, each with the first column again. Only a word wider than the page is ever cut.
 */
export function shapesOf(table: Table, setting: Setting): Shape[] {
  const { sheet } = setting;
  const styles = sheet.tableSizes.map(
    (size): Style => ({ size, leading: Math.round(size * 1.35 * 2) / 2, weight: "regular", colour: "ink" }),
  );
  const [normal, ...smaller] = styles as [Style, ...Style[]];
  const smallest = styles.at(-1) ?? normal;
  const tries = [
    { style: normal, column: sheet.text },
    { style: normal, column: sheet.full },
    ...smaller.map((style) => ({ style, column: sheet.full })),
  ];
  const all = Array.from({ length: columnCount(table) }, (_, index) => index);
  if (table.beside) return [besideShape(all, needsOf(table, smallest, setting), sheet.full, smallest)];
  for (const { style, column } of tries) {
    const needs = needsOf(table, style, setting);
    const unbroken = needs.map((need) => ({ ...need, least: need.short }));
    if (fits(all, unbroken, column.width)) return [shape(all, unbroken, column, style)];
    if (style !== normal && fits(all, needs, column.width)) return [shape(all, needs, column, style)];
  }
  const needs = needsOf(table, normal, setting);
  return partsOf(all, needs, sheet.full.width).map((part) => shape(part, needs, sheet.full, normal));
}

export const columnCount = ({ head, rows, foot }: Table): number =>
  Math.max(0, ...[head, ...rows, ...foot].map((cells) => cells.length));

const gapOf = (count: number): number => (count > 5 ? 8 : 14);
const sum = (numbers: number[]): number => numbers.reduce((total, number) => total + number, 0);
const pick = (needs: Need[], part: number[]): Need[] => part.flatMap((index) => needs[index] ?? []);

const fits = (part: number[], needs: Need[], width: number): boolean =>
  sum(pick(needs, part).map(({ least }) => least)) + gapOf(part.length) * (part.length - 1) <= width;

function needsOf(table: Table, style: Style, setting: Setting): Need[] {
  const extent = (cell: Cell | undefined, look: Style) =>
    cell
      ? extentOf(
          spansOf(cell.inlines, { ...lookOf(look), tabular: cell.align === "end" }, tag("TD", null), setting),
          setting,
        )
      : { least: 0, most: 0 };
  const body = [...table.rows, ...table.foot];
  return Array.from({ length: columnCount(table) }, (_, index): Need => {
    const head = extent(table.head[index], strongOf(style));
    const cells = body.map((row) => extent(row[index], style));
    const least = Math.max(head.least, ...cells.map((cell) => cell.least));
    const most = Math.max(least, ...cells.map((cell) => cell.most));
    return {
      least,
      short: Math.max(head.least, ...cells.map((cell) => (cell.most <= 9 * style.size ? cell.most : cell.least))),
      most,
      head: head.most,
      stretch: body.some((row) => row[index]?.inlines.some(({ kind }) => kind === "tick")),
      figures: body.some((row) => row[index]?.align === "end"),
    };
  });
}

/** The fewest parts, as even as they can be. */
function partsOf([first = 0, ...others]: number[], needs: Need[], width: number): number[][] {
  for (let count = 2; count < others.length; count++) {
    const size = Math.ceil(others.length / count);
    const parts = Array.from({ length: Math.ceil(others.length / size) }, (_, part) => [
      first,
      ...others.slice(part * size, (part + 1) * size),
    ]);
    if (parts.every((part) => fits(part, needs, width))) return parts;
  }
  return others.length === 0 ? [[first]] : others.map((other) => [first, other]);
}

function shape(part: number[], needs: Need[], column: Column, style: Style): Shape {
  const gap = gapOf(part.length);
  const widths = widthsOf(pick(needs, part), column.width - gap * (part.length - 1));
  let x = column.x;
  const columns = part.map((index, nth) => {
    const width = widths[nth] ?? 0;
    const placed = { index, x, width };
    x += width + gap;
    return placed;
  });
  return { columns, column, style };
}

/** Equal columns, and the last as narrow as its words allow. */
function besideShape(all: number[], needs: Need[], column: Column, style: Style): Shape {
  const gap = gapOf(all.length);
  const last = Math.min(needs.at(-1)?.short ?? 0, column.width / all.length);
  const width = (column.width - last - gap * (all.length - 1)) / Math.max(1, all.length - 1);
  const columns = all.map((index) => ({
    index,
    x: column.x + index * (width + gap),
    width: index === all.length - 1 ? last : width,
  }));
  return { columns, column, style };
}

const nearby = 12;

/** Shares out the width: what is spare goes to the columns one writes in, else to the first. */
function widthsOf(needs: Need[], width: number): number[] {
  const least = sum(needs.map((need) => need.least));
  const most = sum(needs.map((need) => need.most));
  if (least > width) {
    const most = cappedAt(
      needs.map((need) => need.least),
      width,
    );
    return needs.map((need) => Math.min(need.least, most));
  }
  if (most > width) {
    const share = (width - least) / (most - least);
    return needs.map((need) => need.least + (need.most - need.least) * share);
  }
  const spare = width - most;
  const unbroken = needs.map((need) => ({ ...need, most: Math.max(need.most, need.head) }));
  const wraps = unbroken.some((need, index) => need.most > (needs[index]?.most ?? 0));
  if (wraps && sum(unbroken.map((need) => need.most)) <= width) return widthsOf(unbroken, width);
  const stretching = needs.filter(({ stretch }) => stretch).length;
  if (stretching > 0) return needs.map((need) => need.most + (need.stretch ? spare / stretching : 0));
  // Figures stand at the right edge; words stay near the words they belong to.
  const first = needs.some(({ figures }) => figures) ? spare : Math.min(spare, 2 * nearby);
  return needs.map((need, index) => need.most + (index === 0 ? first : 0));
}

/** The widest a column may be where not all can have what they ask for: modest ones are served, the others share the rest. */
function cappedAt(asked: number[], width: number): number {
  let left = width;
  let cap = 0;
  for (const [index, one] of [...asked].sort((a, b) => a - b).entries()) {
    cap = left / (asked.length - index);
    if (one > cap) return cap;
    left -= one;
  }
  return cap;
}

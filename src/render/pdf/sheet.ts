import type { Weight } from "./faces.js";

/** label: a roll of labels, one for each section. */
export type Paper = "letter" | "a4" | "label";
export type Colour = "ink" | "quiet" | "hairline" | "accent" | "pale";
/** Points. leading: from baseline to baseline. */
export type Style = { size: number; leading: number; weight: Weight; colour: Colour };
export type Column = { x: number; width: number };

/** Black first: it must survive a tired office printer. Contrast with white is computed in the tests. */
export type Colours = Record<Colour, string>;
export const colours: Colours = {
  ink: "#000000",
  quiet: "#303030",
  hairline: "#8c8c8c",
  accent: "#1c5b66",
  pale: "#e4e4e0",
};

const wide = 54;

/** How far a page is drawn in to hold more: its margin in points, and the shares of size and leading that are kept. */
export type Cut = { margin: number; size: number; leading: number; abreast: boolean };
const uncut: Cut = { margin: wide, size: 1, leading: 1, abreast: false };

/** What the short form is tried on, roomiest first: no regular words under 12 pt, no large ones under 16 (RNIB: 16-18). */
const cuts: Cut[] = [
  { ...uncut, abreast: true },
  { margin: 45, size: 1, leading: 1, abreast: true },
  { margin: 36, size: 1, leading: 0.97, abreast: true },
  { margin: 36, size: 0.95, leading: 0.95, abreast: true },
  { margin: 36, size: 0.88, leading: 0.9, abreast: true },
  { margin: 30, size: 0.88, leading: 0.88, abreast: true },
];

/** Labels of 4 by 6 inches fit the printers of most parcels and packs; common practice, no source. */
const papers = {
  letter: { width: 612, height: 792 },
  a4: { width: 595.28, height: 841.89 },
  label: { width: 288, height: 432 },
};
const side = { width: 108, gutter: 16 };

/** The sheets a page may be set on, roomiest first. */
export const sheetsFor = (paper: Paper, large: boolean, onePage: boolean): Sheet[] =>
  onePage ? cuts.map((cut) => sheetOf(paper, large, cut)) : [sheetOf(paper, large)];

/**
 * The grid and the scale of type. Regular print hangs the section titles in a side column, which leaves a measure of 60-70
 * characters; large print has one column, titles above. RNIB Clear Print: 12 pt at the least, large print 16-18 pt.
 */
export function sheetOf(paper: Paper, large: boolean, cut: Cut = uncut): Sheet {
  return paper === "label" ? labelSheet() : pageOf(paper, large, cut);
}

/** One column, close to the edge, with nothing at the head and the foot: what a hand reads on a box. */
function labelSheet(): Sheet {
  const { width, height } = papers.label;
  const edge = 16;
  const full: Column = { x: edge, width: width - 2 * edge };
  return {
    ...pageOf("letter", false, uncut),
    width,
    height,
    apart: true,
    large: true,
    top: { first: edge, other: edge },
    bottom: height - edge,
    full,
    text: full,
    side: full,
    step: 5,
    tick: 10,
    styles: labelStyles,
    tableSizes: [10],
  };
}

function pageOf(paper: Exclude<Paper, "label">, large: boolean, { margin, size, leading, abreast }: Cut) {
  const { width, height } = papers[paper];
  const full: Column = { x: margin, width: width - 2 * margin };
  const indent = large ? 0 : side.width + side.gutter;
  const text: Column = { x: margin + indent, width: full.width - indent };
  return {
    width,
    height,
    large,
    /** Each section on a sheet of its own, without running lines. */
    apart: false,
    /** First line of page one, first line of the other pages, last line. */
    top: { first: margin - 9, other: margin + 24 },
    bottom: height - margin - 15,
    headBaseline: margin,
    footBaseline: height - margin + 9,
    full,
    text,
    side: large ? full : { x: margin, width: side.width },
    /** About half a line: the step of the vertical rhythm. */
    step: (large ? 10 : 8) * size,
    tick: large ? 18 : 13,
    /** Columns stand beside each other. */
    abreast: abreast || !large,
    styles: cutDown(large ? largeStyles : regularStyles, size, leading, large ? 16 : 12),
    tableSizes: large ? [18, 16] : [12, 11, 10],
  };
}

export type Sheet = ReturnType<typeof pageOf>;

const bold = (size: number, leading: number, colour: Colour = "ink"): Style => ({
  size,
  leading,
  weight: "bold",
  colour,
});
const regular = (size: number, leading: number, colour: Colour = "ink"): Style => ({
  size,
  leading,
  weight: "regular",
  colour,
});

type Styles = typeof regularStyles;

/** Styles drawn in, but none under the least size it may have. */
const cutDown = (styles: Styles, size: number, leading: number, least: number): Styles =>
  Object.fromEntries(
    Object.entries(styles).map(([name, style]) => {
      const cut = Math.max(Math.min(style.size, least), style.size * size);
      return [name, { ...style, size: cut, leading: style.leading * (cut / style.size) * leading }];
    }),
  ) as Styles;

const regularStyles = {
  title: bold(26, 31),
  subtitle: regular(13, 17),
  letterhead: regular(12, 15),
  urgentTitle: bold(15, 18),
  urgent: regular(13, 17),
  urgentNote: regular(12, 15.5, "quiet"),
  urgentPhone: bold(21, 26),
  sectionTitle: bold(13, 16),
  partTitle: bold(12, 16),
  lead: regular(14, 19),
  body: regular(12, 16),
  note: regular(12, 15.5, "quiet"),
  small: regular(12, 15.5, "quiet"),
  running: regular(10.5, 13.5, "quiet"),
};

const largeStyles: Styles = {
  title: bold(32, 38),
  subtitle: regular(18, 23),
  letterhead: regular(16, 20),
  urgentTitle: bold(22, 27),
  urgent: regular(18, 23),
  urgentNote: regular(18, 23, "quiet"),
  urgentPhone: bold(28, 33),
  sectionTitle: bold(20, 25),
  partTitle: bold(18, 23),
  lead: regular(20, 26),
  body: regular(18, 23),
  note: regular(18, 23, "quiet"),
  small: regular(16, 20, "quiet"),
  running: regular(14, 18, "quiet"),
};

const labelStyles: typeof regularStyles = {
  title: bold(13, 16),
  subtitle: regular(10, 12.5),
  letterhead: regular(10, 12.5),
  urgentTitle: bold(13, 16),
  urgent: regular(10, 12.5),
  urgentNote: regular(10, 12.5),
  urgentPhone: bold(13, 16),
  sectionTitle: bold(13, 16),
  partTitle: bold(10, 12.5),
  lead: regular(10.5, 13),
  body: regular(10, 12.5),
  note: regular(10, 12.5),
  small: regular(10, 12.5),
  running: regular(10, 12.5),
};

import type { Weight } from "./faces.js";

export type Paper = "letter" | "a4";
export type Colour = "ink" | "quiet" | "hairline" | "accent" | "pale";
/** Points. leading: from baseline to baseline. */
export type Style = { size: number; leading: number; weight: Weight; colour: Colour };
export type Column = { x: number; width: number };

/** Black first: it must survive a tired office printer. Contrast with white is computed in the tests. */
export const colours: Record<Colour, string> = {
  ink: "#000000",
  quiet: "#303030",
  hairline: "#8c8c8c",
  accent: "#1c5b66",
  pale: "#e4e4e0",
};

const papers = { letter: { width: 612, height: 792 }, a4: { width: 595.28, height: 841.89 } };
const margin = 54;
const side = { width: 108, gutter: 16 };

/**
 * The grid and the scale of type. Regular print hangs the section titles in a side column, which leaves a measure of 60-70
 * characters; large print has one column, titles above. RNIB Clear Print: 12 pt at the least, large print 16-18 pt.
 */
export function sheetOf(paper: Paper, large: boolean) {
  const { width, height } = papers[paper];
  const full: Column = { x: margin, width: width - 2 * margin };
  const indent = large ? 0 : side.width + side.gutter;
  const text: Column = { x: margin + indent, width: full.width - indent };
  return {
    width,
    height,
    large,
    /** First line of page one, first line of the other pages, last line. */
    top: { first: margin - 9, other: 78 },
    bottom: height - 69,
    headBaseline: 54,
    footBaseline: height - 45,
    full,
    text,
    side: large ? full : { x: margin, width: side.width },
    /** About half a line: the step of the vertical rhythm. */
    step: large ? 10 : 8,
    tick: large ? 18 : 13,
    styles: large ? largeStyles : regularStyles,
    tableSizes: large ? [18, 16] : [12, 11, 10],
  };
}

export type Sheet = ReturnType<typeof sheetOf>;

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

const largeStyles: typeof regularStyles = {
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

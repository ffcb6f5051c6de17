const open = /[\u2066-\u2068]/;
const close = "\u2069";
/** Says nothing, and runs from right to left (UAX #9). */
const rightToLeftMark = "\u200f";

/**
 * The lines of one text. A reader's program takes each for a paragraph of its own (UAX #9, P1): what a line keeps to itself is
 * closed at its end and opened again on the next.
 */
export function asParagraphs(lines: readonly string[]): string[] {
  let kept: string[] = [];
  return lines.map((line) => {
    const before = kept.join("");
    for (const sign of line) {
      if (open.test(sign)) kept = [...kept, sign];
      else if (sign === close) kept = kept.slice(0, -1);
    }
    return before + line + close.repeat(kept.length);
  });
}

/** On a page from right to left each line begins so, that one of nothing but a name or a number runs the way the page does. */
export const inDirection = (text: string, direction: "ltr" | "rtl"): string =>
  direction === "rtl" ? text.replace(/^(?=.)/gm, rightToLeftMark) : text;

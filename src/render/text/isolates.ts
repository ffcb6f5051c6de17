const open = /[\u2066-\u2068]/;
const close = "\u2069";
/** Says nothing, and runs from right to left (UAX #9). */
const rightToLeftMark = "\u200f";

/**
 * Lines that a reader's program takes for paragraphs of their own (UAX #9, P1): what one line keeps to itself is closed at its
 * end and opened again on the next. On a page from right to left each begins with a mark, so that a line of nothing but a
 * name or a number runs the way the page does.
 */
export function asParagraphs(text: string, direction: "ltr" | "rtl"): string {
  let kept: string[] = [];
  return text
    .split("\n")
    .map((line) => {
      const before = kept.join("");
      for (const sign of line) {
        if (open.test(sign)) kept = [...kept, sign];
        else if (sign === close) kept = kept.slice(0, -1);
      }
      if (line === "") return line;
      return (direction === "rtl" ? rightToLeftMark : "") + before + line + close.repeat(kept.length);
    })
    .join("\n");
}

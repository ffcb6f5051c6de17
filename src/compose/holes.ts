import type { Block, Inline } from "#handout/handout.js";
import { isolated } from "#locale/isolate.js";

/**
 * Holes keep values out of the Markdown. A value becomes a numbered hole made of characters for private use; the Markdown
 * around it is parsed, and then the hole is filled with its node. So nothing in a value can ever become markup, and a value
 * that itself holds such characters is never read again.
 */
const [open, close, nought] = ["\uE000", "\uE001", 0xe010];
const hole = /\uE000([\uE010-\uE019]+)\uE001/u;
const holeAlone = new RegExp(`^\\s*${hole.source}\\s*$`, "u");

/** What a helper hands to the page: Markdown, trusted, in which every value is a hole. */
export class Fragment {
  constructor(readonly markdown: string) {}
  toString(): string {
    return this.markdown;
  }
}

export type Holes = ReturnType<typeof newHoles>;

/** direction: of the page; a value that runs the other way is kept to itself. */
export function newHoles(direction: "ltr" | "rtl") {
  const fillings: (Inline[] | Block)[] = [];
  const dig = (filling: Inline[] | Block) =>
    open +
    [...String(fillings.push(filling) - 1)].map((digit) => String.fromCharCode(nought + Number(digit))).join("") +
    close;
  const fillingOf = (digits: string) =>
    fillings[Number([...digits].map((digit) => digit.charCodeAt(0) - nought).join(""))] ?? [];

  return {
    inline: (...inlines: Inline[]) => new Fragment(dig(inlines.map((one) => apart(one, direction)))),
    /** Stands alone, whatever the template writes around it. */
    block: (block: Block) => new Fragment(`\n\n${dig(block)}\n\n`),
    /** Cuts text at its holes and puts in their place what they stand for. */
    fill: (text: string): Inline[] =>
      text.split(hole).flatMap((piece, index): Inline[] => {
        if (index % 2 === 0) return piece ? [{ kind: "text", text: piece }] : [];
        const filling = fillingOf(piece);
        return Array.isArray(filling) ? filling : [];
      }),
    /** The block of a text that is one block's hole and nothing else, or null. */
    blockOf: (text: string): Block | null => {
      const [, digits] = holeAlone.exec(text) ?? [];
      const filling = digits === undefined ? [] : fillingOf(digits);
      return Array.isArray(filling) ? null : filling;
    },
  };
}

function apart(inline: Inline, direction: "ltr" | "rtl"): Inline {
  if (inline.kind === "passage") return { ...inline, inlines: inline.inlines.map((one) => apart(one, direction)) };
  return "text" in inline ? { ...inline, text: isolated(inline.text, direction) } : inline;
}

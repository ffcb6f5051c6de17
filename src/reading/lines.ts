import type { Block, Handout, Inline } from "#handout/handout.js";
import { flat, sectionsIn, wordsOf } from "#handout/walk.js";
import type { Place } from "#problems/place.js";

/** One line of a page that holds sentences, with the title it stands under and the place in the plan it follows from. */
export type Line = { section: string; text: string; at: Place };

/** Paragraphs and items of lists. Titles, tables, drawings and lines to sign hold names and numbers, no sentences. */
export const linesOn = (handout: Handout, plan: Place): Line[] =>
  [...sectionsIn(handout)].flatMap(({ title, blocks }) =>
    blocks
      .flatMap((block) => (block.kind === "section" ? [] : sentencesOf(block)))
      .map((inlines) => ({ section: wordsOf(title), text: textOf(inlines), at: placeIn(inlines) ?? plan })),
  );

function sentencesOf(block: Block): Inline[][] {
  if (block.kind === "paragraph") return [block.inlines];
  return block.kind === "list" ? block.items.flatMap(({ inlines, note }) => (note ? [inlines, note] : [inlines])) : [];
}

/** The words of a line in the language of the page. The points of "9:30 a.m." end no sentence. */
function textOf(inlines: readonly Inline[]): string {
  return inlines
    .map((inline) => {
      if (inline.kind === "statement") return textOf(inline.inlines);
      if (inline.kind === "text") return inline.text;
      return inline.kind === "passage" || inline.kind === "tick" ? "" : inline.text.replaceAll(".", "");
    })
    .join("");
}

/** Where the first thing of the line that came from a file was written. */
function placeIn(inlines: readonly Inline[]): Place | null {
  for (const inline of flat(inlines)) {
    const [, file, line, column] = ("from" in inline ? /^(.+):(\d+):(\d+)$/.exec(inline.from) : null) ?? [];
    if (file !== undefined) return { file, line: Number(line), column: Number(column), length: 1 };
  }
  return null;
}

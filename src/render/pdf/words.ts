import type { Handout, Inline } from "#handout/handout.js";
import { blocksIn, linesOf, sectionsIn } from "#handout/walk.js";

/** The words of a line without look or links. */
export function plain(inline: Inline): string {
  switch (inline.kind) {
    case "tick":
      return "";
    case "statement":
    case "passage":
      return inline.inlines.map(plain).join("");
    default:
      return inline.text;
  }
}

/** The words of a handout's lines, to see which letters it is made of. A kind nobody knows has none, and is told where it is drawn. */
export const allWords = (handout: Handout): string =>
  [
    ...(handout.clinic.letterhead ?? []),
    ...[...sectionsIn(handout)].map(({ title }) => title),
    ...[...blocksIn(handout)].flatMap((block) => linesOf(block) ?? []),
  ]
    .map((line) => line.map(plain).join(""))
    .join("\n");

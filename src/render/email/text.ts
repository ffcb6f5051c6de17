import type { Leaf, Letter, LetterPart, Section } from "#handout/handout.js";
import { leavesOf, linesOf, wordsOf } from "#handout/walk.js";

/** The letter as plain text, each language under the one before. Readers wrap it themselves. */
export const textOf = ({ parts }: Letter): string => `${parts.map(partOf).join("\r\n\r\n----\r\n\r\n")}\r\n`;

const partOf = ({ lead, sections }: LetterPart): string =>
  [...(lead.length > 0 ? [wordsOf(lead)] : []), ...sections.flatMap(sectionOf)].join("\r\n\r\n");

const sectionOf = ({ title, blocks }: Section): string[] => [
  wordsOf(title),
  ...blocks.flatMap((block) => (block.kind === "section" ? sectionOf(block) : leavesOf(block).map(leafOf))),
];

function leafOf(block: Leaf): string {
  const mark = block.kind === "list" ? "- " : "";
  return linesOf(block)
    .map((inlines) => `${mark}${wordsOf(inlines)}`)
    .join("\r\n");
}

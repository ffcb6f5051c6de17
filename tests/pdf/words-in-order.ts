import type { Block, Cell, Handout, Inline, Item, Section } from "#handout/handout.js";

const inlineWords = (inline: Inline): string[] => {
  if (inline.kind === "tick") return [];
  return inline.kind === "statement" || inline.kind === "passage" ? inline.inlines.flatMap(inlineWords) : [inline.text];
};
const linesWords = (inlines: Inline[]): string[] => inlines.flatMap(inlineWords);
const rowWords = (cells: Cell[]): string[] => cells.flatMap(({ inlines }) => linesWords(inlines));
const itemWords = (mark: string, { inlines, note }: Item, index: number): string[] => [
  ...(mark === "bullet" ? ["•"] : mark === "number" ? [String(index + 1)] : []),
  ...linesWords(inlines),
  ...linesWords(note ?? []),
];

function blockWords(block: Block | Section): string[] {
  switch (block.kind) {
    case "section":
      return [...linesWords(block.title), ...block.blocks.flatMap(blockWords)];
    case "paragraph":
      return linesWords(block.inlines);
    case "list":
      return block.items.flatMap((item, index) => itemWords(block.mark, item, index));
    case "table":
      return [...linesWords(block.caption), ...[block.head, ...block.rows, ...block.foot].flatMap(rowWords)];
    case "month":
      return [
        block.title,
        ...block.weekdays.map(({ short }) => short),
        ...block.weeks.flat().map(({ text }) => text),
        ...block.legend.map(({ text }) => text),
      ];
    case "figure":
      return [...block.labels.map(({ text }) => text), ...linesWords(block.caption)];
    case "columns":
      return block.columns.flat().flatMap(blockWords);
    case "signature":
      return block.lines.flatMap(linesWords);
  }
}

const rank = ({ weight }: Section): number => (weight === "urgent" ? 0 : 1);

/** Every word a handout prints, in the order it is read; the running lines are not among them. */
export const wordsInOrder = (handout: Handout): string[] => [
  handout.clinic.name,
  handout.clinic.address.join(", "),
  handout.title,
  ...linesWords(handout.subtitle),
  ...linesWords(handout.translationNotice),
  // What is urgent is printed first.
  ...[...handout.sections].sort((one, other) => rank(one) - rank(other)).flatMap(blockWords),
];

/** Without spaces: where a line ends is the printer's choice. */
export const squeezed = (words: string): string => words.replace(/\s/g, "");

import type { Block, Cell, Event, Handout, Inline, Leaf, LetterPart, Section } from "#handout/handout.js";
import { leavesOf } from "#handout/walk.js";

/** What is said in one line: two handouts of the same facts have the same lines in the same order. */
export type Saying = Inline[];

/** A part of a proof: a section of the page, or what is said beside it. id: of the section, or "calendar". */
export type Part = { id: string; title: Inline[]; sayings: Saying[] };

const words = (text: string): Saying => (text === "" ? [] : [{ kind: "text", text }]);
const between: Inline = { kind: "text", text: " · " };

/** The cells of a row, or the words of a drawing, as one line. */
const row = (pieces: Saying[]): Saying =>
  pieces.filter((piece) => piece.length > 0).flatMap((piece, index) => (index > 0 ? [between, ...piece] : piece));
const cells = (all: Cell[]): Saying => row(all.map(({ inlines }) => inlines));

/** Everything a handout says, on its page and beside it, in the order an owner meets it. */
export const partsOf = (handout: Handout): Part[] => [
  top(handout),
  ...handout.sections.map(({ id, title, blocks }) => ({ id, title, sayings: [title, ...blocks.flatMap(inBlock)] })),
  { id: "screen", title: [], sayings: handout.live ? stringsIn(handout.live).map(words) : [] },
  { id: "calendar", title: [], sayings: handout.events.flatMap(inEvent) },
  { id: "messages", title: [], sayings: (handout.messages ?? []).map(words) },
  { id: "letter", title: [], sayings: [words(handout.letter.subject), ...handout.letter.parts.flatMap(inLetter)] },
];

const top = ({ title, subtitle, running, translationNotice, calendarName }: Handout): Part => ({
  id: "top",
  title: [],
  sayings: [words(title), subtitle, words(running.clinic), translationNotice, words(calendarName)],
});

function inBlock(block: Block | Section): Saying[] {
  if (block.kind === "section") return [block.title, ...block.blocks.flatMap(inBlock)];
  return leavesOf(block).flatMap(inLeaf);
}

function inLeaf(leaf: Leaf): Saying[] {
  switch (leaf.kind) {
    case "paragraph":
      return [leaf.inlines];
    case "list":
      return leaf.items.flatMap(({ inlines, note }) => [inlines, note ?? []]);
    case "table":
      return [leaf.caption, ...[leaf.head, ...leaf.rows, ...leaf.foot].map(cells)];
    case "month":
      return leaf.legend.map(({ text }) => words(text));
    case "figure":
      return [leaf.caption, row(leaf.labels.map(({ text }) => words(text))), words(leaf.alt)];
    case "signature":
      return leaf.lines;
  }
}

const inEvent = ({ summary, description, alarms }: Event): Saying[] =>
  [summary, description, ...alarms.map(({ text }) => text)].map(words);

const inLetter = ({ lead, sections }: LetterPart): Saying[] => [
  lead,
  ...sections.flatMap(({ title, blocks }) => [title, ...blocks.flatMap(inBlock)]),
];

/** All words inside plain data, in one order whatever the language. */
function stringsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

import type { Block, Cell, Event, Handout, Inline, Leaf, LetterPart, Section } from "#handout/handout.js";
import { flat, leavesOf } from "#handout/walk.js";

/**
 * What is said in one line: two handouts of the same facts have the same lines in the same order. as: what only a reader who
 * cannot see it is told, of a drawing or of a box to tick.
 */
export type Saying = { inlines: Inline[]; as?: "drawing" | "box" };

/** A part of a proof: a section of the page, or what is said beside it. id: of the section; "beside-calendar" where it is no part of the page. */
export type Part = { id: string; title: Inline[]; sayings: Saying[] };

const textOf = (text: string): Inline[] => (text === "" ? [] : [{ kind: "text", text }]);
const words = (text: string): Saying => ({ inlines: textOf(text) });
const between: Inline = { kind: "text", text: " · " };

/** A line and the boxes in it. */
const line = (inlines: Inline[]): Saying[] => [
  { inlines },
  ...[...flat(inlines)].flatMap((one): Saying[] =>
    one.kind === "tick" ? [{ inlines: textOf(one.label), as: "box" }] : [],
  ),
];

/** The cells of a row, or the words of a drawing, as one line. */
const row = (pieces: Inline[][]): Saying[] =>
  line(pieces.filter((piece) => piece.length > 0).flatMap((piece, index) => (index > 0 ? [between, ...piece] : piece)));
const cells = (all: Cell[]): Saying[] => row(all.map(({ inlines }) => inlines));

/** Everything a handout says, on its page and beside it, in the order an owner meets it. */
export const partsOf = (handout: Handout): Part[] => [
  top(handout),
  ...handout.sections.map(({ id, title, blocks }) => ({
    id,
    title,
    sayings: [...line(title), ...blocks.flatMap(inBlock)],
  })),
  { id: "beside-screen", title: [], sayings: handout.live ? stringsIn(handout.live).map(words) : [] },
  { id: "beside-calendar", title: [], sayings: handout.events.flatMap(inEvent) },
  { id: "beside-messages", title: [], sayings: (handout.messages ?? []).map(words) },
  {
    id: "beside-letter",
    title: [],
    sayings: [words(handout.letter.subject), ...handout.letter.parts.flatMap(inLetter)],
  },
];

const top = ({ title, subtitle, running, translationNotice, calendarName }: Handout): Part => ({
  id: "top",
  title: [],
  sayings: [words(title), ...line(subtitle), words(running.clinic), ...line(translationNotice), words(calendarName)],
});

function inBlock(block: Block | Section): Saying[] {
  if (block.kind === "section") return [...line(block.title), ...block.blocks.flatMap(inBlock)];
  return leavesOf(block).flatMap(inLeaf);
}

function inLeaf(leaf: Leaf): Saying[] {
  switch (leaf.kind) {
    case "paragraph":
      return line(leaf.inlines);
    case "list":
      return leaf.items.flatMap(({ inlines, note }) => [...line(inlines), ...line(note ?? [])]);
    case "table":
      return [...line(leaf.caption), ...[leaf.head, ...leaf.rows, ...leaf.foot].flatMap(cells)];
    case "month":
      return leaf.legend.map(({ text }) => words(text));
    case "figure":
      return [
        ...line(leaf.caption),
        ...row(leaf.labels.map(({ text }) => textOf(text))),
        { inlines: textOf(leaf.alt), as: "drawing" },
      ];
    case "signature":
      return leaf.lines.flatMap(line);
  }
}

const inEvent = ({ summary, description, alarms }: Event): Saying[] =>
  [summary, description, ...alarms.map(({ text }) => text)].map(words);

const inLetter = ({ lead, sections }: LetterPart): Saying[] => [
  ...line(lead),
  ...sections.flatMap(({ title, blocks }) => [...line(title), ...blocks.flatMap(inBlock)]),
];

/** All words inside plain data, in one order whatever the language. */
function stringsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

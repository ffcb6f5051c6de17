import type { Handout, Leaf, Section } from "./handout.js";
import { blocksIn, inlinesIn, linesOf, sectionsIn, wordsOf } from "./walk.js";

/** What is wrong with a handout as a tree: faults of the tool, not of a plan. None in a sound one. */
export function faultsOf(handout: Handout): string[] {
  const sections = [...sectionsIn(handout)];
  return [
    ...twice(sections.map(({ id }) => id)).map((id) => `two sections are called ${id}`),
    ...twice(handout.events.map(({ uid }) => uid)).map((uid) => `two events are called ${uid}`),
    ...sections.flatMap(sectionFaults),
    ...[...blocksIn(handout)].flatMap(blockFaults),
    ...[...inlinesIn(handout)].flatMap((inline) =>
      "text" in inline && inline.text === "" ? [`a ${inline.kind} has no words`] : [],
    ),
  ];
}

const twice = (names: string[]): string[] => [...new Set(names.filter((name, i) => names.indexOf(name) !== i))];

const sectionFaults = ({ id, title, blocks }: Section): string[] => [
  ...(id === "" ? ["a section has no id"] : []),
  ...(wordsOf(title) === "" ? [`section ${id} has no title`] : []),
  ...(blocks.length === 0 ? [`section ${id} is empty`] : []),
];

function blockFaults(block: Leaf): string[] {
  if (block.kind === "table") {
    const wrong = [...block.rows, ...block.foot].filter((row) => row.length !== block.head.length).length;
    return [
      ...(wordsOf(block.caption) === "" ? ["a table has no caption"] : []),
      ...(wrong > 0 ? [`rows of another length than the head: ${wrong}`] : []),
    ];
  }
  if (block.kind === "month")
    return block.weeks.some((week) => week.length !== block.weekdays.length)
      ? [`a week of ${block.iso} is not whole`]
      : [];
  if (block.kind === "figure") return block.alt === "" ? [`figure ${block.id} is not told in words`] : [];
  return linesOf(block).some((line) => line.length === 0) ? [`a line of a ${block.kind} is empty`] : [];
}

import type { Block, Handout, Inline, Letter, Section } from "./handout.js";

/** The tree as text to read and compare: a node a line, values beside their words, so that a change shows where it is. */
export function printTree(handout: Handout): string {
  const {
    sections,
    events,
    subtitle,
    translationNotice,
    clinic,
    running,
    pageWords,
    letter,
    live,
    messages,
    labels,
    ...rest
  } = handout;
  const head = { ...rest, running, pageWords, clinic };
  return [
    ...Object.entries(head).map(
      ([name, value]) => `${name}: ${typeof value === "string" ? value : JSON.stringify(value)}`,
    ),
    `subtitle: ${line(subtitle)}`,
    `notice: ${line(translationNotice)}`,
    ...sections.flatMap((section) => ["", ...sectionLines(section)]),
    "",
    ...events.map((event) => `event ${JSON.stringify(event)}`),
    ...(messages ?? []).map((message) => `message: ${message}`),
    ...(labels ? [`labels: ${labels.title}`, ...indent(labels.sections.flatMap(sectionLines))] : []),
    ...(live ? Object.entries(live).map(([name, value]) => `live ${name}: ${JSON.stringify(value)}`) : []),
    "",
    ...letterLines(letter),
    "",
  ]
    .map((text) => text.replaceAll("\r", "\\r").replaceAll("\n", "\\n"))
    .join("\n");
}

const letterLines = ({ parts, ...head }: Letter): string[] => [
  `letter ${JSON.stringify(head)}`,
  ...parts.flatMap(({ language, lead, sections }) => [
    `${language}: ${line(lead)}`,
    ...indent(sections.flatMap(sectionLines)),
  ]),
];

const indent = (lines: string[]): string[] => lines.map((text) => `  ${text}`);

const sectionLines = ({ id, level, weight, title, blocks }: Section): string[] => [
  `${"#".repeat(level)} ${line(title)} {${id}${weight === "urgent" ? " urgent" : ""}}`,
  ...indent(blocks.flatMap((block) => (block.kind === "section" ? sectionLines(block) : blockLines(block)))),
];

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case "paragraph":
      return [`${block.role}: ${line(block.inlines)}`];
    case "list":
      return block.items.flatMap(({ inlines, note }) => [
        `${marks[block.mark]} ${line(inlines)}`,
        ...(note ? [`    note: ${line(note)}`] : []),
      ]);
    case "table": {
      const row = (cells: (typeof block)["head"]) =>
        cells.map(({ inlines, align }) => `${aligns[align]}${line(inlines)}`);
      return [
        `table: ${line(block.caption)}`,
        ...[block.head, ...block.rows].map((cells) => `  | ${row(cells).join(" | ")}`),
        ...block.foot.map((cells) => `  = ${row(cells).join(" | ")}`),
      ];
    }
    case "month":
      return [
        `month ${block.iso}: ${block.title}`,
        `  ${block.weekdays.map(({ short }) => short).join(" ")}`,
        ...block.weeks.map((week) => `  ${week.map(({ text, inMonth }) => (inMonth ? text : `(${text})`)).join(" ")}`),
        ...block.weeks.flat().flatMap(({ iso, marks }) => marks.map(({ mark, text }) => `  ${iso} ${mark}: ${text}`)),
        ...block.legend.map(({ mark, text }) => `  legend ${mark}: ${text}`),
      ];
    case "figure":
      return [
        `figure ${block.id} ${block.width}x${block.height}: ${line(block.caption)}`,
        `  alt: ${block.alt}`,
        `  shapes: ${block.shapes.length}, labels: ${block.labels.map(({ text }) => text).join(" / ")}`,
        ...(block.narrow === undefined
          ? []
          : [`  narrow: ${block.narrow ? `${block.narrow.width}x${block.narrow.height}` : "none"}`]),
      ];
    case "columns":
      return block.columns.flatMap((column) => ["column:", ...indent(column.flatMap(blockLines))]);
    case "signature":
      return block.lines.map((words) => `sign: ${line(words)}`);
  }
}

const marks = { bullet: "-", number: "#", tick: "[ ]" };
const aligns = { start: "", center: "^", end: ">" };

const line = (inlines: readonly Inline[]): string => inlines.map(inlineText).join("");

/** Plain words as they are, strong ones between asterisks, every other node in brackets with its value. */
function inlineText(inline: Inline): string {
  switch (inline.kind) {
    case "text":
      return inline.strong ? `*${inline.text}*` : inline.text;
    case "when":
      return `[when ${inline.iso} "${inline.text}" ${inline.from}]`;
    case "dose":
      return `[dose ${inline.medicine} ${inline.amount} ${inline.unit} "${inline.text}" ${inline.from}]`;
    case "money":
      return `[money ${inline.minor} ${inline.currency} "${inline.text}" ${inline.from}]`;
    case "phone":
      return `[phone ${inline.e164} "${inline.text}" ${inline.from}]`;
    case "email":
      return `[email ${inline.address} "${inline.text}" ${inline.from}]`;
    case "statement":
      return `[${inline.id} ${line(inline.inlines)}]`;
    case "tick":
      return `[tick "${inline.label}"]`;
    case "passage":
      return `[${inline.language}: ${line(inline.inlines)}]`;
  }
}

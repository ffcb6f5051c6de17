import type { Block, Cell, Inline, Item, Leaf, Paragraph as Written } from "#handout/handout.js";
import { leavesOf } from "#handout/walk.js";
import type { Holes } from "./holes.js";
import { inlinesOf } from "./inlines.js";
import type { Content, MarkdownList, MarkdownTable, Paragraph } from "./markdown.js";

type Role = Written["role"];

/** The block kinds a template may name, `:::lead`. */
export const containers = ["lead", "small", "table", "columns", "column"] as const;

/** Blocks of Markdown as blocks of the handout. */
export const blocksOf = (children: readonly Content[], holes: Holes, role: Role = "body"): Block[] =>
  children.flatMap((child) => blockOf(child, holes, role));

function blockOf(child: Content, holes: Holes, role: Role): Block[] {
  switch (child.type) {
    case "paragraph":
      return paragraph(child, holes, role);
    case "list":
      return [list(child, holes)];
    case "table":
      return [table(child, [], holes)];
    case "containerDirective":
      if (child.name === "table") return captioned(child.children, holes);
      if (child.name === "columns") return [{ kind: "columns", columns: columnsOf(child.children, holes) }];
      return blocksOf(child.children, holes, child.name === "lead" || child.name === "small" ? child.name : role);
    default:
      return [];
  }
}

function paragraph(node: Paragraph, holes: Holes, role: Role): Block[] {
  const [only, ...others] = node.children;
  const block = only?.type === "text" && others.length === 0 ? holes.blockOf(only.value) : null;
  return [block ?? { kind: "paragraph", role, inlines: inlinesOf(node.children, holes) }];
}

const box = /^\[ \]\s+/;

/**
 * "- [ ] words" is a list to tick off; a second paragraph of an item is its note. The box is looked for before holes are
 * filled: a value that looks like one stays a value.
 */
function list({ ordered, children }: MarkdownList, holes: Holes): Block {
  const items = children.map(({ children }) =>
    children.flatMap((child) => (child.type === "paragraph" ? [child] : [])),
  );
  const ticked = items.every(([first]) => first?.children[0]?.type === "text" && box.test(first.children[0].value));
  const mark = ticked ? "tick" : ordered ? "number" : "bullet";
  return { kind: "list", mark, items: items.map((paragraphs) => itemOf(paragraphs, ticked, holes)) };
}

function itemOf([first, ...rest]: Paragraph[], ticked: boolean, holes: Holes): Item {
  const inlines = inlinesOf(first?.children ?? [], holes, ticked ? box : null);
  const notes = rest.map(({ children }) => inlinesOf(children, holes));
  return notes.length > 0
    ? { inlines, note: notes.flatMap((note, i) => (i === 0 ? note : [space, ...note])) }
    : { inlines };
}

/** The `:::column`s inside `::::columns`; what stands between them belongs to none and is a column of its own. */
const columnsOf = (children: readonly Content[], holes: Holes): Leaf[][] =>
  children.map((child) => blocksOf([child], holes).flatMap(leavesOf)).filter((blocks) => blocks.length > 0);

const space: Inline = { kind: "text", text: " " };

/** A paragraph, the caption, and the table it names. */
const captioned = (children: readonly Content[], holes: Holes): Block[] => {
  const caption = children.flatMap((child) => (child.type === "paragraph" ? inlinesOf(child.children, holes) : []));
  return children.flatMap((child) => (child.type === "table" ? [table(child, caption, holes)] : []));
};

function table({ children, align }: MarkdownTable, caption: Inline[], holes: Holes): Block {
  const row = (cells: MarkdownTable["children"][number]): Cell[] =>
    cells.children.map((cell, column) => ({
      inlines: inlinesOf(cell.children, holes),
      align: align?.[column] === "right" ? "end" : align?.[column] === "center" ? "center" : "start",
    }));
  const [head = [], ...rows] = children.map(row);
  return { kind: "table", caption, head, rows, foot: [] };
}

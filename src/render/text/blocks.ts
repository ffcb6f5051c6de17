import type { Block, Figure, List, Section, Signature } from "#handout/handout.js";
import { words } from "./inline.js";
import { month } from "./month.js";
import { table } from "./table.js";
import { tidy, widthOf, wrap } from "./wrap.js";

/** A section and everything in it, with a blank line between one thing and the next. */
export const section = ({ level, title, blocks }: Section): string => {
  const heading = level === 2 ? underlined(words(title), "-") : wrap(words(title));
  return [heading, ...blocks.map(block)].join("\n\n");
};

/** A heading with a rule under it as long as its longest line. */
export const underlined = (title: string, rule: string): string => {
  const lines = wrap(title);
  return `${lines}\n${rule.repeat(Math.max(...lines.split("\n").map(widthOf)))}`;
};

const block = (node: Block | Section): string => {
  switch (node.kind) {
    case "section":
      return section(node);
    case "paragraph":
      return wrap(words(node.inlines));
    case "list":
      return list(node);
    case "table":
      return table(node);
    case "month":
      return month(node);
    case "figure":
      return figure(node);
    case "signature":
      return signature(node);
    case "columns":
      return node.columns.flat().map(block).join("\n\n");
  }
};

const marks = { bullet: () => "- ", tick: () => "[ ] ", number: (index: number) => `${index + 1}. ` };

const list = ({ mark, items }: List): string =>
  items
    .map(({ inlines, note }, index) => {
      const before = marks[mark](index);
      const lines = wrap(words(inlines), before);
      return note ? `${lines}\n${wrap(words(note), " ".repeat(before.length))}` : lines;
    })
    .join("\n");

const figure = ({ alt, caption }: Figure): string =>
  [wrap(words(caption)), wrap(`[${tidy(alt)}]`)].filter((lines) => lines !== "").join("\n");

const lineToWriteOn = "_".repeat(40);

const signature = ({ lines }: Signature): string =>
  lines.map((line) => `${lineToWriteOn}\n${wrap(words(line))}`).join("\n\n");

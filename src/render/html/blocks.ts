import { h } from "hastscript";
import type { Block, Columns, Inline, Item, List, Paragraph, Section, Signature } from "#handout/handout.js";
import { type Direction, figure } from "./figure.js";
import { inlines, plain } from "./inline.js";
import { month } from "./month.js";
import type { Element, ElementContent } from "./nodes.js";
import { table } from "./table.js";

/** A section and everything in it. Its id is where a link in the page leads. */
export const section = ({ id, level, weight, title, blocks }: Section, direction: Direction): Element =>
  h(
    "section",
    { id, className: weight },
    h(`h${level}`, {}, inlines(title)),
    blocks.map((one) => block(one, direction)),
  );

const block = (node: Block | Section, direction: Direction): Element => {
  switch (node.kind) {
    case "section":
      return section(node, direction);
    case "paragraph":
      return paragraph(node);
    case "list":
      return list(node);
    case "table":
      return table(node);
    case "month":
      return month(node);
    case "figure":
      return figure(node, direction);
    case "signature":
      return signature(node);
    case "columns":
      return columns(node, direction);
  }
};

const columns = ({ columns }: Columns, direction: Direction): Element =>
  h(
    "div.columns",
    {},
    columns.map((blocks) =>
      h(
        "div",
        {},
        blocks.map((one) => block(one, direction)),
      ),
    ),
  );

export const paragraph = ({ role, inlines: line }: Omit<Paragraph, "kind">): Element =>
  h("p", { className: isPhone(line) ? [role, "ring"] : role }, inlines(line));

/** A number that stands alone is there to be pressed. */
const isPhone = (line: readonly Inline[]): boolean => line.length === 1 && line[0]?.kind === "phone";

const list = ({ mark, items }: List): Element => {
  const children = items.map((item) =>
    h("li", {}, mark === "tick" ? ticked(item.inlines) : inlines(item.inlines), note(item)),
  );
  return mark === "number" ? h("ol", {}, children) : h("ul", { className: mark }, children);
};

const note = ({ note: line }: Item): Element | null => (line ? h("p.note", {}, inlines(line)) : null);

/** A box named by its line. A label may hold no second box, so a line with one of its own is named by attribute. */
const ticked = (line: readonly Inline[]): ElementContent[] => {
  const words = h("span", {}, inlines(line));
  const box = { type: "checkbox", dataDaily: careIn(line) };
  return holdsTick(line)
    ? [h("span.tickable", {}, h("input", { ...box, ariaLabel: plain(line) }), words)]
    : [h("label.tickable", {}, h("input", box), words)];
};

/** Care from the tables is given anew each day: the name under which a script keeps the tick of a day. */
const careIn = (line: readonly Inline[]): string | null => {
  const [first] = line;
  return first?.kind === "statement" ? first.id : null;
};

const holdsTick = (line: readonly Inline[]): boolean =>
  line.some((node) => node.kind === "tick" || ("inlines" in node && holdsTick(node.inlines)));

const signature = ({ lines }: Signature): Element =>
  h(
    "div.signatures",
    {},
    lines.map((line) => h("p.signature", {}, inlines(line))),
  );

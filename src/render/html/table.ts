import { h } from "hastscript";
import type { Cell, Table } from "#handout/handout.js";
import { inlines, plain } from "./inline.js";
import type { Element } from "./nodes.js";

/** More columns than this do not fit side by side on a phone, so each row becomes a short list there. */
const sideBySide = 3;
/** More than this do not fit a small screen either at the width their words ask for: they share what there is. */
const atTheirWidth = 5;

/**
 * A table whose first column heads its rows. In a wide one each cell also holds the words that head its column: on a phone
 * they are shown in its stead, so the list reads well even where a browser then forgets that it is a table.
 */
export const table = ({ caption, head, rows, foot, beside }: Table): Element => {
  const wide = head.length > sideBySide;
  const headings = head.map((cell) => plain(cell.inlines));

  const bodyCell = (cell: Cell, column: number): Element => {
    if (column === 0) return h("th", { scope: "row", className: cell.align, ...spoken(cell) }, inlines(cell.inlines));
    if (!wide || cell.inlines.length === 0)
      return h("td", { className: cell.align, ...spoken(cell) }, inlines(cell.inlines));
    const heading = h("span.heading", {}, headings[column]);
    return h("td", { className: cell.align, ...spoken(cell) }, heading, h("span", {}, inlines(cell.inlines)));
  };
  const boxes = rows.flatMap(([, ...cells]) => cells);
  const form = boxes.some(isTick) && boxes.every((cell) => isTick(cell) || cell.inlines.length === 0);
  const row = (cells: Cell[]): Element => h("tr", {}, cells.map(bodyCell));

  return h(
    "table",
    {
      className: wide
        ? ["wide", ...(head.length > atTheirWidth ? ["many"] : []), ...(form ? ["form"] : [])]
        : beside
          ? "beside"
          : null,
    },
    [
      h("caption.aside", {}, inlines(caption)),
      h("thead", {}, h("tr", {}, head.map(columnHead))),
      h("tbody", {}, rows.map(row)),
      ...(foot.length > 0 ? [h("tfoot", {}, foot.map(row))] : []),
    ],
  );
};

/** A box and nothing else: a row of them is a form to fill in, whose boxes stand side by side on a phone too. */
const isTick = ({ inlines: [first, ...more] }: Cell): boolean => first?.kind === "tick" && more.length === 0;

const spoken = ({ spoken }: Cell) => (spoken ? { lang: spoken.language, dir: spoken.direction } : {});

/** A corner with no words heads nothing. */
const columnHead = (cell: Cell): Element =>
  cell.inlines.length === 0
    ? h("td", {})
    : h("th", { scope: "col", className: cell.align, ...spoken(cell) }, inlines(cell.inlines));

import type { Cell, Table } from "#handout/handout.js";
import { words } from "./inline.js";
import { wrap } from "./wrap.js";

/**
 * First what the table is and what its columns are. Then a row is an item named by its first cell; a second cell stands
 * beside it, more cells follow under it, each after the words that head its column: on a line of its own where there is a
 * box to tick.
 */
export const table = ({ caption, head, rows, foot }: Table): string => {
  const headings = head.map((cell) => words(cell.inlines));

  const row = (cells: Cell[]): string => {
    const [name = "", ...values] = cells.map(({ inlines }) => words(inlines));
    if (values.length === 1) return wrap(labelled(name, values[0] ?? ""), "- ");
    const lines = values.map((value, index) => (value === "" ? "" : labelled(headings[index + 1] ?? "", value)));
    const said = lines.filter((line) => line !== "");
    const rows = cells.some(holdsTick) ? said : [said.join("; ")].filter((line) => line !== "");
    return [wrap(name, "- "), ...rows.map((line) => wrap(line, "  "))].join("\n");
  };

  const about = [wrap(words(caption)), wrap(headings.filter((heading) => heading !== "").join("; "))];
  return [...about, ...[...rows, ...foot].map(row)].filter((lines) => lines !== "").join("\n");
};

const holdsTick = ({ inlines }: Cell): boolean => inlines.some(({ kind }) => kind === "tick");

const labelled = (label: string, value: string): string => [label, value].filter((part) => part !== "").join(": ");

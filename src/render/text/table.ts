import type { Cell, Table } from "#handout/handout.js";
import { words } from "./inline.js";
import { together, wrap } from "./wrap.js";

/**
 * First what the table is and what its columns are. Then a row is an item named by its first cell; a second cell stands
 * beside it, more cells follow under it, each after the words that head its column: on a line of its own where there is a
 * box to tick. A form to fill in is a row of boxes instead: its days are said once, beside the boxes.
 */
export const table = (table: Table): string => {
  const { caption, head, rows, foot } = table;
  const headings = head.map((cell) => words(cell.inlines));
  if (isForm(table)) return [wrap(words(caption)), ...rows.map((row) => toFillIn(row, headings))].join("\n");

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

const isTick = ({ inlines: [first, ...more] }: Cell): boolean => first?.kind === "tick" && more.length === 0;

/** Several columns of boxes, or of nothing but room to write, and nothing else. */
const isForm = ({ head, rows, foot }: Table): boolean => {
  const cells = rows.flatMap(([, ...values]) => values);
  return (
    head.length > 2 && foot.length === 0 && cells.some(isTick) && cells.every((one) => isTick(one) || isEmpty(one))
  );
};

const isEmpty = ({ inlines }: Cell): boolean => inlines.length === 0;
const roomToWrite = "____";

const toFillIn = ([name, ...values]: Cell[], headings: readonly string[]): string => {
  const boxes = values.map((value, i) => {
    const heading = headings[i + 1] ?? "";
    return isTick(value) ? `${words(value.inlines)} ${heading}` : labelled(heading, roomToWrite);
  });
  return [wrap(words(name?.inlines ?? []), "- "), wrap(boxes.map(together).join("; "), "  ")].join("\n");
};

const holdsTick = ({ inlines }: Cell): boolean => inlines.some(({ kind }) => kind === "tick");

const labelled = (label: string, value: string): string => [label, value].filter((part) => part !== "").join(": ");

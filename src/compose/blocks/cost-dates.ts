import type { Estimate } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { moneyOn, whenOn } from "../helpers/values.js";
import { type Page, plainOn } from "../page.js";

type Dates = Estimate["byDate"];

/** A tired reader does not follow more rows than this. */
const mostRows = 6;

/** The days that are told, evenly chosen from all on which something is charged; the first and the last always. */
export function datesShown(byDate: Dates): Dates {
  if (byDate.length <= mostRows) return byDate;
  const chosen = Array.from({ length: mostRows }, (_, i) => Math.round((i * (byDate.length - 1)) / (mostRows - 1)));
  return byDate.filter((_, i) => chosen.includes(i));
}

/** What it has come to by the end of a day, the least and the most: the words of the figure. None where all is on one day. */
export function costDatesOn(page: Page, { byDate, from: place }: Estimate): Block | null {
  if (byDate.length < 2) return null;
  const from = placeText(place);
  const words = (key: string): Inline[] => [{ kind: "text", text: plainOn(page, `handout:estimate.dates.${key}`) }];
  const cell = (inlines: Inline[], align: Cell["align"] = "end"): Cell => ({ inlines, align });
  return {
    kind: "table",
    caption: words("table"),
    head: [cell(words("day"), "start"), cell(words("least")), cell(words("most"))],
    rows: datesShown(byDate).map(({ day, total: { low, high } }) => [
      cell([whenOn(page, day, from)], "start"),
      cell([moneyOn(page, low, from)]),
      cell([moneyOn(page, high, from)]),
    ]),
    foot: [],
  };
}

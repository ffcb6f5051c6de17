import { addDays, eachDayOfInterval, format, parseISO } from "date-fns";
import type { Medicine } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { placedNameOn } from "../medicine-name.js";
import { type Page, plainOn } from "../page.js";

/** A fortnight; at each visit a new paper brings a new one. */
const mostDays = 14;

const text = (words: string): Inline => ({ kind: "text", text: words });

/** Where to note each dose of a medicine given only as needed: a row a day, and no more boxes in it than doses are allowed. */
export function neededLogOn(page: Page, medicine: Medicine): Block | null {
  const { view, voice } = page;
  const most = medicine.asNeededMost;
  if (most === null) return null;
  const name = placedNameOn(page, medicine);
  const start = parseISO(view.discharged.slice(0, 10));
  const days = medicine.steps.reduce((sum, step) => sum + step.days, 0);
  const end = addDays(start, Math.min(days, mostDays) - 1);
  const numbers = Array.from({ length: most }, (_, i) => i + 1);
  const from = placeText(medicine.from);
  const words = (key: string, values = {}) => plainOn(page, `handout:needed.${key}`, { medicine: name, ...values });
  const cell = (inlines: Inline[], align: Cell["align"] = "center"): Cell => ({ inlines, align });
  return {
    kind: "table",
    caption: [text(words("caption", { count: most }))],
    head: [cell([text(words("day"))], "start"), ...numbers.map((number) => cell([text(words("dose", { number }))]))],
    rows: eachDayOfInterval({ start, end }).map((date) => {
      const day = format(date, "yyyy-MM-dd");
      const label = (number: number) => words("tick", { number, day: voice.monthDay(day) });
      return [
        cell([{ kind: "when", iso: day, text: voice.shortDay(day), from }], "start"),
        ...numbers.map((number) =>
          cell([
            { kind: "tick", label: label(number), id: `needed-${medicine.id}-${day}-${number}` },
            text(` ${words("time")}`),
          ]),
        ),
      ];
    }),
    foot: [],
  };
}

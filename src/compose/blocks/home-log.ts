import type { Day, HomeLog } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { type Page, plainOn } from "../page.js";
import { evenly } from "../parts.js";

/** So many days stand side by side on a sheet of paper, beside what is asked of each; at most. */
const daysAcross = 7;

const text = (words: string): Inline => ({ kind: "text", text: words });
const start = (...inlines: Inline[]): Cell => ({ inlines, align: "start" });
const center = (...inlines: Inline[]): Cell => ({ inlines, align: "center" });

/** The log to fill in: a row a question, a column a day, in as few tables as hold it, each of about as many days. */
export const homeLogOn = (page: Page): Block[] =>
  evenly(page.view.log.days, daysAcross).map((days) => tableOf(page, days));

/** A table of days has the questions of its days. */
const isAskedOnAny =
  (days: readonly Day[]) =>
  ({ days: asked }: HomeLog["rows"][number]) =>
    asked.some((day) => days.includes(day));

function tableOf(page: Page, days: readonly Day[]): Block {
  const { voice, view } = page;
  const from = placeText(page.plan);
  const [first = "", last = ""] = [days[0], days.at(-1)].map((day) => day && voice.monthDay(day));
  const words = (key: string, values = {}) => plainOn(page, `handout:log.${key}`, values);
  return {
    kind: "table",
    caption: [text(first === last ? words("caption-day", { day: first }) : words("caption", { first, last }))],
    head: [
      start(text(words("head"))),
      ...days.map((day) => center({ kind: "when", iso: day, text: voice.shortDay(day), from })),
    ],
    rows: view.log.rows.filter(isAskedOnAny(days)).map(({ id, write, days: asked }) => {
      const question = words(`row.${id}`);
      const box = (day: Day): Inline[] => {
        if (!asked.includes(day)) return [text("–")];
        const label = words("tick", { what: question, day: voice.monthDay(day) });
        return write === "tick" ? [{ kind: "tick", label, id: `log-${id}-${day}` }] : [];
      };
      return [start(text(question)), ...days.map((day) => center(...box(day)))];
    }),
    foot: [],
  };
}

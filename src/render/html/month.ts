import { h } from "hastscript";
import type { DayMark, Month, MonthDay } from "#handout/handout.js";
import type { Element } from "./nodes.js";

/** A month as a table of weeks. Marks are shapes, never colour alone; their words are read aloud with the day. */
export const month = ({ title, weekdays, weeks, legend }: Month): Element => {
  const days = weeks.flat();
  return h(
    "div.month",
    {},
    h(
      "table",
      {},
      h("caption", {}, title),
      h("thead", {}, h("tr", {}, weekdays.map(weekday))),
      h(
        "tbody",
        {},
        weeks.map((week) => h("tr", {}, week.map(day))),
      ),
    ),
    legend.length > 0
      ? h(
          "ul.legend",
          {},
          legend.map((mark) => h("li", {}, sample(mark, days), " ", mark.text)),
        )
      : null,
  );
};

const weekday = ({ short, long }: Month["weekdays"][number]): Element =>
  h("th", { scope: "col" }, h("span", { ariaHidden: "true" }, short), h("span.aside", {}, long));

const day = ({ iso, text, label, inMonth, marks }: MonthDay): Element =>
  h(
    "td",
    { className: inMonth ? null : "outside" },
    h("time", { dateTime: iso, ariaHidden: "true", className: ["day", ...marks.map(({ mark }) => mark)] }, text),
    h("span.aside", {}, [label, ...marks.map((mark) => mark.text)].join(", ")),
  );

/** The mark as it looks on the first day that has it. */
const sample = ({ mark }: DayMark, days: readonly MonthDay[]): Element => {
  const first = days.find(({ marks, inMonth }) => inMonth && marks.some((other) => other.mark === mark));
  return h("span", { ariaHidden: "true", className: ["day", mark] }, first?.text ?? "");
};

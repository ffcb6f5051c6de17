import type { Month, MonthDay } from "#handout/handout.js";
import { tidy, wrap } from "./wrap.js";

/** Only the days that are marked, for a grid means nothing to a reader who hears it; days in a row that say the same as one. */
export const month = ({ title, weeks }: Month): string =>
  [wrap(tidy(title)), ...runs(weeks.flat()).map(run)].join("\n");

const said = ({ marks }: MonthDay): string => marks.map(({ text }) => text).join(", ");

const runs = (days: readonly MonthDay[]): MonthDay[][] =>
  days
    .reduce<MonthDay[][]>((found, day) => {
      const last = found.at(-1);
      if (last?.[0] && said(last[0]) === said(day)) last.push(day);
      else found.push([day]);
      return found;
    }, [])
    .filter(([day]) => day && day.marks.length > 0);

const run = (days: MonthDay[]): string => {
  const [first, last] = [days.at(0), days.at(-1)];
  if (!first || !last) return "";
  const named = first === last ? first.label : `${first.label} – ${last.label}`;
  return wrap(tidy(`${named}: ${said(first)}`), "- ");
};

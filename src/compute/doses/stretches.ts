import type { Dose, Stretch } from "../facts.js";
import type { Asked } from "./asked.js";
import type { Step } from "./steps.js";

/** The steps of a course with the doses that belong to each, as they are told in words. */
export function stretchesOf(asked: Asked, steps: readonly Step[], doses: readonly Dose[]): Stretch[] {
  let before = 0;
  return steps.map(({ giving, every, days, count, path }) => {
    const own = doses.slice(before, before + count);
    before += count;
    return {
      give: giving.give,
      everyHours: every.hours,
      often: every.hours < 24 ? "times-a-day" : every.hours === 24 ? "daily" : "every-few-days",
      days,
      times: timesOf(own, 24 / every.hours),
      first: own[0]?.at ?? null,
      last: own.at(-1)?.at ?? null,
      from: asked.at(...path),
    };
  });
}

/** The times of day that come again and again; a first dose at a time of its own is told beside them. */
function timesOf(doses: readonly Dose[], perDay: number): Stretch["times"] {
  const shown = doses.map(({ slot, part }) => ({ at: slot, part }));
  const [, ...later] = shown;
  const comeAgain = later.length > 0 && doses.length > perDay;
  const times = new Map((comeAgain ? later : shown).map((time) => [time.at, time]));
  return [...times.values()].sort((a, b) => a.at.localeCompare(b.at));
}

import type { Live, Ring } from "#handout/live.js";
import { dosesDue, dosesNext, stepsAt, type Told, visitNext } from "./due.js";
import { openAt } from "./open.js";

/** All that the top of the page says at one moment; lists may be empty. */
export type Now = {
  said: string;
  ring: Ring[];
  over: string;
  due: Told[];
  asked: Told[];
  next: Told[];
  visit: Told | null;
  steps: { title: string; list: { id: string; text: string }[] };
};

/** now: on the clinic's clock. Where the clock cannot be believed, or the plan is over, nothing is due. */
export function nowAt(live: Live, now: string, ticked: (id: string) => boolean): Now {
  const { said, ring } = openAt(live, now);
  const day = now.slice(0, 10);
  const nothing = { said, ring, over: "", due: [], asked: [], next: [], visit: null, steps: { title: "", list: [] } };
  if (day < live.known.from) return nothing;
  if (day > live.lastDay) return { ...nothing, over: live.words.over };
  const part = stepsAt(live, now);
  return {
    said,
    ring,
    over: "",
    ...dosesDue(live, now, ticked),
    next: dosesNext(live, now),
    visit: visitNext(live, now) ?? null,
    steps: {
      title: part?.title ?? "",
      // A step is done anew in each part of each day.
      list: part?.steps.map(({ id, text }) => ({ id: `${day} ${part.from} ${id}`, text })) ?? [],
    },
  };
}

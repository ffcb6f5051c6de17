import type { Live, Ring } from "#handout/live.js";
import { dosesDue, dosesNext, stepsAt, type Told, visitNext } from "./due.js";
import { openAt } from "./open.js";

/** All that the top of the page says at one moment; lists may be empty. knows: it says what comes next, if anything does. */
export type Now = {
  knows: boolean;
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
  const steps = { title: "", list: [] };
  const nothing = { knows: false, said, ring, over: "", due: [], asked: [], next: [], visit: null, steps };
  if (day < live.known.from) return nothing;
  if (day > live.lastDay) return { ...nothing, knows: true, over: live.words.over };
  const part = stepsAt(live, now);
  return {
    knows: true,
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

import type { Live, Ring } from "#handout/live.js";
import { dayAfter, nearness, weekdayOf } from "./clock.js";

/** What is known of the clinic at a time on its clock, and whom to ring: both, where it is not known. */
export function openAt({ known, ring, shut, week, words }: Live, now: string): { said: string; ring: Ring[] } {
  const [today = "", time = ""] = now.split("T");
  if (today < known.from || today > known.to) return { said: words.unsure, ring: [ring.open, ring.closed] };

  const on = (day: string) =>
    week
      .filter(({ weekday }) => weekday === weekdayOf(day) && !shut.includes(day))
      .sort((a, b) => (a.open < b.open ? -1 : 1));
  const present = on(today).find(({ open, close }) => open <= time && time < close);
  if (present) return { said: present.now, ring: [ring.open] };

  // A week ahead the name of the day would be taken for today's.
  const coming = [0, 1, 2, 3, 4, 5, 6]
    .map((count) => dayAfter(today, count))
    .filter((day) => day <= known.to)
    .flatMap((day) => on(day).map((stretch) => ({ day, stretch })))
    .find(({ day, stretch }) => day > today || stretch.open > time);
  const said = coming ? coming.stretch.next[nearness(coming.day, today)] : words.closed;
  return { said, ring: [ring.closed] };
}

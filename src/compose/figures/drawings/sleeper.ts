import type { Species } from "#compute/facts.js";
import type { Stroke } from "./stroke.js";

/** An animal asleep on its chest, the head to the left, 110 x 70; `chest` is the line of its back that rises and falls. */
const chest = "M34 30C44 18 62 12 78 18C94 24 102 38 100 54";

const asleep: Stroke[] = [
  { path: chest, width: 1.8 },
  { path: "M100 54C98 61 90 64 80 64C62 65 40 65 26 63C20 62 20 56 26 55", width: 1.8 },
  { path: "M100 54C106 58 106 64 100 66C96 67 90 66 86 64", width: 1.4 },
  { path: "M12 41C14 43 17 43 19 41", width: 1.2 },
  {
    path: "M4.6 46C4.6 44.7 5.7 43.6 7 43.6C8.3 43.6 9.4 44.7 9.4 46C9.4 47.3 8.3 48.4 7 48.4C5.7 48.4 4.6 47.3 4.6 46Z",
    width: 1,
    fill: "ink",
  },
  { path: "M78 64C72 58 74 50 82 48", width: 1.2 },
];

const dogHead: Stroke[] = [
  { path: "M34 30C30 24 22 22 16 26C10 30 6 38 6 46C6 52 12 55 20 55C28 55 34 52 38 48", width: 1.8 },
  { path: "M28 25C32 20 37 22 38 28C39 35 37 42 33 44C29 44 27 32 28 25Z", width: 1.3, fill: "pale" },
];
/** Pointed ears and whiskers. */
const catHead: Stroke[] = [
  {
    path: "M34 30L33 15L24 23C21 22 18 23 16 24L8 17L10 31C7 36 6 41 6 46C6 52 12 55 20 55C28 55 34 52 38 48",
    width: 1.8,
  },
  { path: "M31 25L30 20L27 23M12 27L11 22", width: 1.1 },
  { path: "M12 48L1 52M13 50L3 57", width: 0.7 },
];

export const sleeper: Record<Species, Stroke[]> = { dog: [...dogHead, ...asleep], cat: [...catHead, ...asleep] };

/** The back where it is when the chest is full, and an arrow the way it goes. */
export const rises: Stroke[] = [
  { path: "M36 26C46 10 64 3 80 9C98 16 106 34 103 50", width: 1 },
  { path: "M64 -2L64 -16M58 -10L64 -17L70 -10", width: 1.6 },
];
export const falls: Stroke[] = [{ path: "M64 -18L64 -3M58 -9L64 -2L70 -9", width: 1.6 }];

/** A clock with a hand for seconds, 70 x 70. */
export const clock: Stroke[] = [
  { path: "M5 35C5 18.4 18.4 5 35 5C51.6 5 65 18.4 65 35C65 51.6 51.6 65 35 65C18.4 65 5 51.6 5 35Z", width: 1.8 },
  { path: "M35 8L35 14M62 35L56 35M35 62L35 56M8 35L14 35", width: 1.4 },
  { path: "M35 35L35 20M35 35L46 41", width: 2 },
  { path: "M35 35L50 17", width: 0.9 },
];

import type { Spot, Stroke } from "./stroke.js";

/**
 * A bandage as it is drawn: what holds it stays, the bandage itself slips; its first stroke is its outline. drops: where water
 * falls that wets it, beside all that is drawn.
 */
export type Drawn = {
  holds: Stroke[];
  bandage: [Stroke, ...Stroke[]];
  slips: (from: Spot) => Spot;
  drops: [x: number, y: number][];
};

/** Left and right of a thing that stands upright. */
export const aside: Drawn["drops"] = [
  [-36, -24],
  [36, -30],
  [42, 2],
];

/** A pad held by ties through loops of thread, its middle at 0, 0. */
export const tieOver: Drawn = {
  holds: [
    {
      path: "M-27 -26C-27 -27.66 -25.66 -29 -24 -29C-22.34 -29 -21 -27.66 -21 -26C-21 -24.34 -22.34 -23 -24 -23C-25.66 -23 -27 -24.34 -27 -26ZM-11 -26C-11 -27.66 -9.66 -29 -8 -29C-6.34 -29 -5 -27.66 -5 -26C-5 -24.34 -6.34 -23 -8 -23C-9.66 -23 -11 -24.34 -11 -26ZM5 -26C5 -27.66 6.34 -29 8 -29C9.66 -29 11 -27.66 11 -26C11 -24.34 9.66 -23 8 -23C6.34 -23 5 -24.34 5 -26ZM21 -26C21 -27.66 22.34 -29 24 -29C25.66 -29 27 -27.66 27 -26C27 -24.34 25.66 -23 24 -23C22.34 -23 21 -24.34 21 -26ZM-27 26C-27 24.34 -25.66 23 -24 23C-22.34 23 -21 24.34 -21 26C-21 27.66 -22.34 29 -24 29C-25.66 29 -27 27.66 -27 26ZM-11 26C-11 24.34 -9.66 23 -8 23C-6.34 23 -5 24.34 -5 26C-5 27.66 -6.34 29 -8 29C-9.66 29 -11 27.66 -11 26ZM5 26C5 24.34 6.34 23 8 23C9.66 23 11 24.34 11 26C11 27.66 9.66 29 8 29C6.34 29 5 27.66 5 26ZM21 26C21 24.34 22.34 23 24 23C25.66 23 27 24.34 27 26C27 27.66 25.66 29 24 29C22.34 29 21 27.66 21 26Z",
      width: 1.3,
    },
  ],
  bandage: [
    {
      path: "M-26 -18C-17.3 -18.7 -8.7 -20 0 -20C8.7 -20 17.3 -18.7 26 -18C26.7 -12 28 -6 28 0C28 6 26.7 12 26 18C17.3 18.7 8.7 20 0 20C-8.7 20 -17.3 18.7 -26 18C-26.7 12 -28 6 -28 0C-28 -6 -26.7 -12 -26 -18Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M-24 -24L-8 24L8 -24L24 24M24 -24L8 24L-8 -24L-24 24", width: 1.1 },
  ],
  slips: ({ x, y }) => ({ x: x + 16, y: y + 12, turn: 24 }),
  drops: aside,
};

/** A wrapped lower leg, the paw to the left, its middle at 0, 0. */
export const legWrap: Drawn = {
  holds: [
    {
      path: "M-6 -44C-6.7 -36.7 -8 -29.3 -8 -22C-8 -14.7 -6 -7 -6 0C-6 7 -6 15 -8 20C-10 25 -15.3 27 -18 30C-20.7 33 -23.7 35.7 -24 38C-24.3 40.3 -23.7 42.8 -20 44C-16.3 45.2 -7.3 45 -2 45C3.3 45 9.2 45.8 12 44C14.8 42.2 14.7 38.7 15 34C15.3 29.3 13.8 22.3 14 16C14.2 9.7 15.3 2.7 16 -4C16.7 -10.7 17.3 -17.3 18 -24C18.7 -30.7 19.3 -37.3 20 -44",
      width: 1.6,
    },
    { path: "M-14 44C-15 40 -14 38 -12 36M-5 45C-6 41 -5 39 -4 37", width: 1 },
  ],
  bandage: [
    {
      path: "M-10 -30C-5 -29 -0.2 -27 5 -27C10.2 -27 15.7 -29 21 -30C20.3 -21.3 19.5 -12.7 19 -4C18.5 4.7 18.3 13.3 18 22C13.3 23 8.7 25 4 25C-0.7 25 -5.3 23 -10 22C-9.3 13.3 -8 4.7 -8 -4C-8 -12.7 -9.3 -21.3 -10 -30Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M-9 -18L20 -24M-9 -6L20 -13M-9 6L19 -1M-9 18L18 11", width: 1 },
  ],
  slips: ({ x, y }) => ({ x: x - 1, y: y + 20 }),
  drops: aside,
};

/** A drop of water, its middle at 0, 0. */
export const drop: Stroke = {
  path: "M0 -8C1.7 -5 4.5 -1.3 5 1C5.5 3.3 3.8 5 3 6C2.2 7 1 7 0 7C-1 7 -2.2 7 -3 6C-3.8 5 -5.5 3.3 -5 1C-4.5 -1.3 -1.7 -5 0 -8Z",
  width: 1.3,
};

import type { Species } from "#compute/facts.js";
import { aside, type Drawn, legWrap } from "./bandages.js";
import { bodies } from "./bodies.js";
import { heads } from "./heads.js";
import { movedPath, type Spot, type Stroke } from "./stroke.js";

/** A drawing made smaller, its middle brought to 0, 0. */
const small = (strokes: readonly Stroke[], spot: Spot): Stroke[] =>
  strokes.map((stroke) => ({ ...stroke, path: movedPath(stroke.path, spot) }));

type Wrap = [Stroke, ...Stroke[]];

const head = { x: -52, y: -34, scale: 0.62 };
/** Over the crown, behind the eye and under the throat: the outline and its turns, on the head of ./heads.ts. */
const headTurns: Record<Species, Wrap> = {
  dog: [
    {
      path: "M68 16C76 17 88 28 98 38C99 52 97 68 92 80C82 79 72 76 62 69C60 54 61 32 68 16Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M64 32L98 50M62 46L96 64M62 60L92 78", width: 1 },
  ],
  cat: [
    {
      path: "M60 22C70 26 82 22 88 18C96 28 99 36 104 40C104 54 102 68 98 81C88 81 74 78 62 74C59 58 57 38 60 22Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M59 36L104 50M59 50L102 66M61 64L98 80", width: 1 },
  ],
};

const body = { x: -62, y: -44, scale: 0.5 };
/** Round the chest and the belly, between the legs. */
const bodyTurns: Record<Species, Wrap> = {
  dog: [
    {
      path: "M102 50C122 54 144 53 164 52C168 68 168 88 164 106C146 100 132 106 110 112C104 92 100 70 102 50Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M116 52C113 70 116 92 122 109M134 53C131 72 133 88 138 104M151 52C149 70 150 88 153 102", width: 1 },
  ],
  cat: [
    {
      path: "M104 58C124 59 144 56 162 57C166 74 166 94 162 112C146 109 130 111 110 114C104 96 101 76 104 58Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M118 58C115 76 117 96 122 114M136 57C133 76 134 94 139 112M151 56C149 74 150 94 152 111", width: 1 },
  ],
};

const drawn = (
  holds: readonly Stroke[],
  [outline, ...turns]: Wrap,
  at: Spot,
  { slips, drops }: Pick<Drawn, "slips" | "drops">,
): Drawn => ({
  holds: small(holds, at),
  bandage: [{ ...outline, path: movedPath(outline.path, at) }, ...small(turns, at)],
  slips,
  drops,
});

/** Above the neck, in front of it and behind. */
const overNeck: Drawn["drops"] = [
  [-38, -24],
  [14, -32],
  [36, -26],
];
/** Above the back, between head and tail. */
const overBack: Drawn["drops"] = [
  [-10, -34],
  [8, -38],
  [25, -32],
];

/** A wrap round the head; slipped, it lies over the eyes. */
export const headWrap = (species: Species): Drawn =>
  drawn(heads[species].strokes, headTurns[species], head, {
    slips: ({ x, y }) => ({ x: x - 17, y: y + 3, turn: -8 }),
    drops: overNeck,
  });

/** A wrap round the body; slipped, it has moved to the hips. */
export const bodyWrap = (species: Species): Drawn =>
  drawn(bodies[species], bodyTurns[species], body, {
    slips: ({ x, y }) => ({ x: x + 17, y: y + 3, turn: 6 }),
    drops: overBack,
  });

/** A leg with a stiff board under its bandage. */
export const splint: Drawn = {
  holds: legWrap.holds,
  bandage: [
    {
      path: "M-12 -36C-2 -34 12 -34 23 -36C22 -18 21 4 19 30C10 33 -2 33 -11 30C-10 8 -12 -14 -12 -36Z",
      width: 1.8,
      fill: "pale",
    },
    { path: "M21 -40L27 -39L23 34L17 34Z", width: 1.5, fill: "pale" },
    { path: "M-12 -24L22 -28M-12 -8L21 -12M-11 8L20 4M-11 22L19 18", width: 1 },
  ],
  slips: ({ x, y }) => ({ x: x + 3, y: y + 14, turn: 9 }),
  drops: aside,
};

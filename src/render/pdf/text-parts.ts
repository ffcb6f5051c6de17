import { type Direction, directionMarks, fromStart, levelsOf, stretchesOf } from "./bidi.js";
import type { Faces, Fount } from "./faces.js";
import type { Style } from "./sheet.js";

/** A stretch of words in one font and one direction. x: from the left end of the words. */
export type Part = { text: string; x: number; fount: Fount; rightToLeft: boolean };

/** Words as they are drawn, in the order they are read: each part has its place, whatever is drawn before it. */
export function partsOf(text: string, style: Style, tabular: boolean, direction: Direction, faces: Faces): Part[] {
  const face = faces[style.weight];
  const parts = stretchesOf(text, levelsOf(text, direction)).flatMap(({ text: stretch, level }) =>
    face
      .runs(stretch.replace(directionMarks, ""))
      .filter((run) => run.text !== "")
      .map((run) => ({ ...run, level, width: face.width(run.text, style.size, tabular) })),
  );
  const places = new Map<number, number>();
  let x = 0;
  const levels = parts.map(({ level }) => level);
  for (const index of fromStart(levels, "ltr")) {
    places.set(index, x);
    x += parts[index]?.width ?? 0;
  }
  return parts.map((part, index) => ({
    text: part.text,
    x: places.get(index) ?? 0,
    fount: part.fount,
    rightToLeft: part.level % 2 === 1,
  }));
}

/** A position in a file the clinician can open: line and column count from 1, length in characters. */
export type Place = { file: string; line: number; column: number; length: number };

/** Where each value of a plan was written, by its path ("care/0/course/1"). A clinic's own paths start with "clinic/". */
export type Places = Record<string, Place>;

/** The place of a value, or of the nearest thing around it that was written. */
export function placeOf(places: Places, ...path: (string | number)[]): Place {
  for (let depth = path.length; depth >= 0; depth--) {
    const place = places[path.slice(0, depth).join("/")];
    if (place) return place;
  }
  return { file: "plan", line: 1, column: 1, length: 1 };
}

/** A stretch of words inside a value that was written on one line. */
export const within = (place: Place, offset: number, length: number): Place => ({
  ...place,
  column: place.column + offset,
  length: Math.max(1, length),
});

/** "plan.yaml:14:11" */
export const placeText = ({ file, line, column }: Place): string => `${file}:${line}:${column}`;

import type { Drawing, Label, Shape } from "#handout/handout.js";

/** A picture in a panel whose left upper corner is x, y, and the words that go with it. */
export type Panel = {
  words: string;
  shapes: (x: number, y: number) => Shape[];
  labels?: (x: number, y: number) => Label[];
};

export const panelWidth = 125;
const panelHeight = 96;
const narrow = { width: 300, size: 14, row: 104 };

/** Pictures side by side with their words under them; on a narrow screen under each other, with their words beside them. */
export function panels(pictures: readonly Panel[]): Drawing & { narrow: Drawing } {
  const drawn = (place: (i: number) => [number, number], words: (i: number) => Omit<Label, "text">) => ({
    shapes: pictures.flatMap(({ shapes }, i) => shapes(...place(i))),
    labels: pictures.flatMap((picture, i): Label[] => [
      { text: picture.words, ...words(i) },
      ...(picture.labels?.(...place(i)) ?? []),
    ]),
  });
  const { row } = narrow;
  return {
    width: pictures.length * panelWidth,
    height: panelHeight + 18,
    ...drawn(
      (i) => [i * panelWidth, 0],
      (i) => ({ x: i * panelWidth + panelWidth / 2, y: panelHeight + 12, size: 12, align: "center" }),
    ),
    narrow: {
      width: narrow.width,
      height: pictures.length * row,
      ...drawn(
        (i) => [0, i * row],
        (i) => ({ x: panelWidth + 6, y: i * row + panelHeight / 2 + 5, size: narrow.size, align: "start" }),
      ),
    },
  };
}

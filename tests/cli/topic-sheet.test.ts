import { expect, it } from "vitest";
import { languages, openHouse, topicSheet, topics } from "#index.js";
import { shippedFiles } from "#io/shipped.js";

const { value: house } = openHouse(await shippedFiles());

it("every topic can be read in every language, also where words agree with the sex of an animal nobody has named", () => {
  if (!house) throw new Error("the shipped house does not open");
  const tags = languages(house).map(({ tag }) => tag);
  expect(tags).toContain("ar");
  for (const tag of tags)
    for (const { id } of topics(house, tag))
      expect(
        topicSheet(house, id, tag, "[name]")?.said.every(({ text }) => text.length > 0),
        `${id} ${tag}`,
      ).toBe(true);
});

it("tells the course it often has, until when its collar often stays on, and when the care is over", () => {
  const sheet = house && topicSheet(house, "surgical-drain", "en", "[name]");
  expect(sheet).toMatchObject({ oftenCourse: ["drain removal day 3-5"], oftenUntil: "drain out", collar: "needed" });
  expect(sheet?.said.filter(({ of }) => of === "ends").map(({ text }) => text)).toEqual([
    "The drain care ends when we have taken out the drain and the hole has closed.",
  ]);
});

it("says what every page of the topic says, the gravest signs first, and whom the care may not suit", () => {
  const lump = house && topicSheet(house, "mass-removal", "en", "Rex");
  const signs = lump?.said.filter(({ of }) => ["now", "today", "visit"].includes(of)) ?? [];
  expect(signs.map(({ of }) => of)).toEqual(signs.map(({ of }) => of).toSorted((a, b) => order(a) - order(b)));
  expect(signs.map(({ text }) => text)).toContain("Rex falls and cannot get up, or will not wake up.");
  expect(house && topicSheet(house, "abscess-home-care", "en", "Rex")?.doubtful).toEqual(["diabetic", "young"]);
});
const order = (urgency: string) => ["now", "today", "visit"].indexOf(urgency);

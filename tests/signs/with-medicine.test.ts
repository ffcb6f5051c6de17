import { expect, it } from "vitest";
import { care, tables } from "./help.js";

const patient = (takes: string) => `species: cat, sex: female, takes: [${takes}]`;
const urgency = (takes: string) =>
  care(["topic: abscess-home-care, site: left front leg"], patient(takes)).signs.find(
    ({ id }) => id === "signs.throat-swelling",
  )?.urgency;

// The same page that the statement of the medicine cites: hard breathing, hives, a swollen face: go at once.
it.each(["amoxicillin-clavulanate", "Cefovecin", "cephalexin 250 mg"])(
  "with %s a face that swells is among the signs to go for at once, and so on page one",
  (name) => expect(urgency(name)).toBe("now"),
);

it("without one of that group it is not among them, where nothing else near the throat is sore", () =>
  expect(urgency("doxycycline")).toBe(undefined));

it("each group that an animal may be given is one of the table of medicines", () => {
  const given = tables.animals.filter((row) => row.given);
  expect(given.map(({ id }) => id).sort()).toEqual(["given-beta-lactam", "given-corticosteroid", "given-nsaid"]);
  for (const { takes } of given) expect(takes?.length).toBeGreaterThan(5);
});

// The data sheet of prednisolone for dogs and cats: not with ulcers of stomach or bowel.
it("with a corticosteroid blood in the vomit or black stools cannot wait, as the medicine's own sentence says", () => {
  const blood = (takes: string) =>
    care(["topic: abscess-home-care, site: left front leg"], patient(takes)).signs.find(
      ({ id }) => id === "signs.blood-vomit",
    )?.urgency;
  expect([blood("prednisolone"), blood("dexamethasone 0.5 mg"), blood("doxycycline")]).toEqual([
    "now",
    "now",
    undefined,
  ]);
});

import { describe, expect, it } from "vitest";
import { doses, medicines, q, type Written } from "../doses/help.js";
import { care, ids } from "./help.js";

const patient = (takes: string) => `species: dog, sex: female, takes: [${takes}]`;
const signs = (line: string, takes: string) => care([line], patient(takes)).signs;
const open =
  "topic: open-wound-clinic-bandage, site: left cheek, bandage: tie-over, course: [change every day for 3 days]";

// FDA, owner information on NSAIDs: stop and contact the vet for vomiting, diarrhea, eating less, lethargy.
describe("with an anti-inflammatory medicine", () => {
  it("the owner calls at the first vomit, not the second, and before more of the medicine", () => {
    const said = ids(signs(open, "Carprofen 100 mg"));
    expect(said).toContain("signs.upset-on-nsaid");
    for (const later of ["signs.vomiting", "signs.not-eating"]) expect(said).not.toContain(later);
    expect(ids(signs(open, "gabapentin"))).toEqual(expect.arrayContaining(["signs.vomiting", "signs.not-eating"]));
    expect(ids(signs(open, "gabapentin"))).not.toContain("signs.upset-on-nsaid");
  });

  it("eating less is told of the same day, but for the sleepy day after an anaesthetic", () => {
    const urgency = (line: string, takes: string) =>
      signs(line, takes).find(({ id }) => id === "signs.eats-less")?.urgency;
    expect(urgency(open, "meloxicam")).toBe("today");
    expect(urgency(open, "gabapentin")).toBe("visit");
    expect(urgency("topic: mass-removal, site: back", "meloxicam")).toBe("visit");
  });

  it("is known by every name that the table of medicines has", () => {
    const names = medicines.rows
      .filter(({ groups }) => groups.some(({ id }) => id === "nsaid"))
      .flatMap((row) => row.names);
    expect(names.length).toBeGreaterThan(20);
    for (const name of names) expect(ids(signs(open, name))).toContain("signs.upset-on-nsaid");
  });
});

describe("what an owner is told of medicines together", () => {
  const clav: Written = { name: "amoxicillin-clavulanate", tablet: q("375 mg"), give: q("1 tablet") };
  const carprofen: Written = { name: "carprofen", tablet: q("100 mg"), give: q("1 tablet"), every: "24 h" };
  const gabapentin: Written = { name: "gabapentin", capsule: q("100 mg"), give: q("1 capsule") };
  const told = (...given: Written[]) =>
    (doses(given).value?.medicines ?? expect.fail()).flatMap(({ statements }) => ids(statements));

  it("soft stools are not called common where they are a sign to stop another", () => {
    const both = told(clav, carprofen);
    expect(both).toContain("nsaid.stop-signs");
    expect(both).not.toContain("antibiotic.effects");
    expect(both).toContain("antibiotic.finish");
    expect(told(clav, gabapentin)).toContain("antibiotic.effects");
  });
});

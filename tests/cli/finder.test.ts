import { describe, expect, it } from "vitest";
import { finder } from "../../src/cli/finder.js";
import { openHouse, topics } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";

const { value: house } = openHouse(await shippedFiles());
if (!house) throw new Error("the house is broken");
const finds = (typed: string, seen: string, also: string) => finder([1], () => ({ seen, also }))(typed).length > 0;
const finders = new Map(
  house.locales.tags.map((tag) => [
    tag,
    finder(topics(house, tag), ({ id, name, also }) => ({ seen: `${id} ${name}`, also })),
  ]),
);
const found = (language: string, typed: string) =>
  finders
    .get(language)?.(typed)
    .map(({ id }) => id) ?? [];

describe("what is typed", () => {
  it.each([
    ["the beginning of a word", "lac", true],
    ["any case, and without accents", "SUTURE", true],
    ["several words, in any order", "glue lac", true],
    ["not one of several words alone", "kin lac", false],
    ["a part of what is seen", "closed-w", true],
    ["a part of a compound that is seen", "wunde", true],
    ["no part of what is not seen", "ceration", false],
    ["nothing", "", false],
    ["no word", " - ", false],
    ["what a pattern is made of", ".*", false],
  ])("%s: %s", (_, typed, is) =>
    expect(finds(typed, "wound-closed Bisswunde", "laceration, skin glue, suturé")).toBe(is),
  );

  it.each([
    ["duong", "đường"],
    ["oeso", "sonde œsophagienne"],
    ["fuss", "Fuß"],
    ["ｔｐｌｏ", "TPLO"],
    ["割", "被割伤"],
    ["الطحال", "استئصال طحال"],
    ["طحال", "استئصال الطحال"],
    ["اغلاق", "إِغلاق"],
    ["عضه", "عضة كلب"],
  ])("%s finds %s", (typed, also) => expect(finds(typed, "", also)).toBe(true));
});

it("several words that are seen as they are typed find nothing else; one finds by other words too", () => {
  expect(found("en", "open wound")).toEqual(["open-wound-clinic-bandage"]);
  expect(found("en", "wound open")).toContain("delayed-closure");
  expect(found("en", "GA")).toEqual(expect.arrayContaining(["packing-strip", "anaesthesia-recovery"]));
});

it("what shows the word that was typed comes before what only goes by it", () => {
  expect(found("en", "stitch")).toEqual(["sutured-wound", "delayed-closure"]);
});

describe("the topics that everyday words find", () => {
  it.each([
    ["en", "cut", "sutured-wound"],
    ["en", "laceration", "sutured-wound"],
    ["en", "stitched", "sutured-wound"],
    ["en", "dog bite", "bite-wound"],
    ["en", "fracture", "splint-or-cast"],
    ["en", "OHE", "spay-dog"],
    ["en", "tplo", "orthopaedic-surgery"],
    ["en", "tumor", "mass-removal"],
    ["en", "cherry eye", "eye-ulcer-or-surgery"],
    ["en", "otitis", "ear-infection"],
    ["en", "throwing up", "vomiting-diarrhoea"],
    ["en", "blocked tom", "urinary-blockage"],
    ["en", "bladder stones", "cystotomy"],
    ["en", "kennel cough", "respiratory-infection"],
    ["es", "corte", "sutured-wound"],
    ["es", "sutura", "sutured-wound"],
    ["es", "mordedura", "bite-wound"],
    ["es", "fractura", "splint-or-cast"],
    ["es", "ovariohisterectomia", "spay-dog"],
    ["es", "ligamento", "orthopaedic-surgery"],
    ["es", "tumor", "mass-removal"],
    ["es", "cornea", "eye-ulcer-or-surgery"],
    ["es", "otitis", "ear-infection"],
    ["es", "vomita", "vomiting-diarrhoea"],
    ["es", "gato obstruido", "urinary-blockage"],
    ["es", "cálculos", "cystotomy"],
    ["es", "tos perreras", "respiratory-infection"],
    ["de", "schnitt", "sutured-wound"],
    ["de", "genaht", "sutured-wound"],
    ["de", "hundebiss", "bite-wound"],
    ["de", "fraktur", "splint-or-cast"],
    ["de", "Eierstöcke", "spay-dog"],
    ["de", "kreuzband", "orthopaedic-surgery"],
    ["de", "Umfangsvermehrung", "mass-removal"],
    ["de", "Hornhaut", "eye-ulcer-or-surgery"],
    ["de", "otitis", "ear-infection"],
    ["de", "Brechdurchfall", "vomiting-diarrhoea"],
    ["de", "Harnverhalt", "urinary-blockage"],
    ["de", "Blasensteine", "cystotomy"],
    ["de", "Zwingerhusten", "respiratory-infection"],
  ])("%s: %s", (language, typed, topic) => {
    const ids = found(language, typed);
    expect(ids).toContain(topic);
    expect(ids.length, ids.join(", ")).toBeLessThanOrEqual(3);
  });

  it("English words find in every language, and a variant finds what its base does", () => {
    for (const language of ["es", "de", "fr", "pt-BR", "vi", "zh-Hans", "ar", "en-GB"])
      expect(found(language, "lacerat"), language).toContain("sutured-wound");
  });

  it.each(house.locales.tags)("every topic is found by its id, its name and each of its words in %s", (language) => {
    for (const { id, name, also } of topics(house, language))
      for (const typed of [id, name, ...also.split(/[,、،] ?/)]) expect(found(language, typed), typed).toContain(id);
  });
});

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fontFaces } from "#render/html/style/fonts.js";
import { house } from "../examples/examples.js";

const facesFor = (words: string) => fontFaces(house.fonts.web, words);
const names = (faces: string) => [...faces.matchAll(/font-family: "([^"]*)"/g)].map(([, name]) => name);
const carries = (faces: string, file: string) =>
  faces.includes(readFileSync(new URL(`../../fonts/${file}`, import.meta.url)).toString("base64"));

describe("the fonts that a page carries", () => {
  test.each([
    ["Mañana, œuf, Größe", []],
    ["Bác sĩ thú y", ["Handout Latin"]],
    ["Ζωή, Жизнь", ["Handout Greek"]],
    ["جرح", ["Handout Arabic"]],
  ])("%s", (words, more) => {
    const each = ["Handout", ...more];
    expect(names(facesFor(words))).toEqual(each.flatMap((name) => [name, name]));
  });

  test("a word of Persian or Urdu is joined within one font, which has the letters of Arabic too", () => {
    for (const [words, whole] of [
      ["جرح في الخد", false],
      ["پشمک", true],
      ["ٹائیگر", true],
    ] as const) {
      const faces = facesFor(words);
      expect([words, carries(faces, "web-arabic-all-regular.woff2")]).toEqual([words, whole]);
      expect([words, carries(faces, "web-arabic-regular.woff2")]).toEqual([words, !whole]);
    }
  });
});

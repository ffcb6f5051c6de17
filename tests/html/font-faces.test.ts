import { readFileSync } from "node:fs";
import { create, type Font } from "fontkit";
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

  test("have every letter that a family has; beside a letter of Arabic also every mark and sign", () => {
    // A byte each, by which a family is known in the page.
    const byte = (i: number) => new Uint8Array([i]);
    const families = house.fonts.web.map((_, i) => ({ regular: byte(i), bold: byte(i) }));
    const sets = house.fonts.web.map(({ regular }) => new Set((create(Buffer.from(regular)) as Font).characterSet));
    const shown = (code: number, words: string) =>
      sets.some((set, i) => {
        const carried = fontFaces(families, words).includes(Buffer.from(byte(i)).toString("base64"));
        return carried && set.has(code);
      });
    const codes = sets.flatMap((set) => [...set].map((code) => ({ code, text: String.fromCodePoint(code) })));
    // A letter that several scripts share stands beside one of its own.
    const letters = codes.filter(({ text }) => /\p{L}/u.test(text) && !/\p{Script=Common}/u.test(text));
    const ofArabic = codes.filter(({ text }) => /[\u0600-\u06ff\u0750-\u077f]/u.test(text));
    expect(letters.length).toBeGreaterThan(500);
    expect(letters.filter(({ code, text }) => !shown(code, text))).toEqual([]);
    expect(ofArabic.filter(({ code, text }) => !shown(code, `ب${text}`))).toEqual([]);
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

/** One family: the bytes of two WOFF2 files. */
export type FontFamily = { regular: Uint8Array; bold: Uint8Array };

const face = (name: string, weight: number, bytes: Uint8Array): string => `@font-face {
  font-family: "${name}";
  font-weight: ${weight};
  src: url("data:font/woff2;base64,${Buffer.from(bytes).toString("base64")}") format("woff2");
}`;

/** Letters beyond Western European ones, which the first family lacks; and the scripts of the families after it. */
const beyondLatin = /[\u0100-\u0130\u0132-\u0151\u0154-\u017f\u01a0\u01a1\u01af\u01b0\u1e80-\u1ef9]|[\u0300-\u036f]/u;
const greekOrCyrillic = /\p{Script=Greek}|\p{Script=Cyrillic}/u;
const arabic = /\p{Script=Arabic}/u;
/** What the Arabic language alone does without: a word is joined within one font, so such a page has a family with all of it. */
const beyondArabic =
  /(?![\u060c\u061b\u061f\u0621-\u063a\u0640-\u0652\u0660-\u066c\u0670])[\u0600-\u06ff\u0750-\u077f]/u;

/** The families the page needs, carried inside it: a browser asks each in turn for what those before it lack. */
export function fontFaces(families: readonly FontFamily[], words: string): string {
  const [plain, latin, greek, right, rightAll] = families;
  const joined = beyondArabic.test(words) ? rightAll : right;
  const needed = [
    plain && { family: plain, name: "Handout" },
    latin && beyondLatin.test(words) && { family: latin, name: "Handout Latin" },
    greek && greekOrCyrillic.test(words) && { family: greek, name: "Handout Greek" },
    joined && arabic.test(words) && { family: joined, name: "Handout Arabic" },
  ];
  return needed
    .flatMap((one) => (one ? [face(one.name, 400, one.family.regular), face(one.name, 700, one.family.bold)] : []))
    .join("\n");
}

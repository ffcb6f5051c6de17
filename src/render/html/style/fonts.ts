/** One family: the bytes of two WOFF2 files. */
export type FontFamily = { regular: Uint8Array; bold: Uint8Array };

const face = (name: string, weight: number, bytes: Uint8Array): string => `@font-face {
  font-family: "${name}";
  font-weight: ${weight};
  src: url("data:font/woff2;base64,${Buffer.from(bytes).toString("base64")}") format("woff2");
}`;

/** Letters beyond Western European ones, which the first family lacks; and Arabic, which the third has. */
const beyondLatin =
  /[\u0102-\u0111\u0128\u0129\u0168\u0169\u01a0\u01a1\u01af\u01b0]|\p{Script=Greek}|\p{Script=Cyrillic}|[\u1e00-\u1eff]/u;
const arabic = /\p{Script=Arabic}/u;

/** The families the page needs, carried inside it: a browser asks each in turn for what those before it lack. */
export function fontFaces(families: readonly FontFamily[], words: string): string {
  const [plain, latin, right] = families;
  const needed = [
    plain && { family: plain, name: "Handout" },
    latin && beyondLatin.test(words) && { family: latin, name: "Handout Latin" },
    right && arabic.test(words) && { family: right, name: "Handout Arabic" },
  ];
  return needed
    .flatMap((one) => (one ? [face(one.name, 400, one.family.regular), face(one.name, 700, one.family.bold)] : []))
    .join("\n");
}

const face = (weight: number, bytes: Uint8Array): string => `@font-face {
  font-family: "Handout";
  font-weight: ${weight};
  src: url("data:font/woff2;base64,${Buffer.from(bytes).toString("base64")}") format("woff2");
}`;

/** The two weights of the page, carried inside it. */
export const fontFaces = ({ regular, bold }: { regular: Uint8Array; bold: Uint8Array }): string =>
  [face(400, regular), face(700, bold)].join("\n");

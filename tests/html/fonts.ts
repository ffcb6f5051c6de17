import { readFileSync } from "node:fs";

const file = (weight: number): Uint8Array =>
  readFileSync(
    new URL(
      `../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff2`,
      import.meta.url,
    ),
  );

/** The two weights the page carries. */
export const fonts = [{ regular: file(400), bold: file(700) }];

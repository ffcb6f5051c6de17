import { readFileSync } from "node:fs";
import { fonts } from "./help.js";

const file = (name: string) => new Uint8Array(readFileSync(`fonts/${name}.ttf`));
const family = (name: string) => ({ regular: file(`pdf-${name}-regular`), bold: file(`pdf-${name}-bold`) });

/** All the families a page can be drawn with, in their order. */
export const allFonts = [...fonts, family("latin"), family("arabic"), family("han")];

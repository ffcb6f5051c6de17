import type { From } from "#handout/handout.js";
import { type Problem, problem } from "#problems/problem.js";
import type { Direction } from "./bidi.js";
import type { Faces, Weight } from "./faces.js";
import { placeFrom } from "./place-from.js";
import type { Sheet, Style } from "./sheet.js";

/** All that the making of a page leans on. set: the words as they are drawn; what no font can draw becomes a problem. */
export type Setting = {
  sheet: Sheet;
  direction: Direction;
  digits: string[];
  set: (text: string, weight: Weight, from: From | undefined) => string;
  width: (text: string, style: Style, tabular?: boolean) => number;
  report: (found: Problem) => void;
};

/** Characters the font may lack that look the same as one it has. */
const twins: Record<string, string> = { "\u202f": "\u00a0", "\u2011": "-", "\u2010": "-" };

export function settingOf(
  sheet: Sheet,
  faces: Faces,
  { digits, direction }: { digits: string; direction: Direction },
  report: (found: Problem) => void,
): Setting {
  const reported = new Set<string>();
  const lacking = (character: string, from: From | undefined): void => {
    const key = `${character} ${from ?? ""}`;
    if (reported.has(key)) return;
    reported.add(key);
    const codepoint = `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;
    report(problem("glyph-missing", placeFrom(from), { character, codepoint }));
  };
  return {
    sheet,
    direction,
    digits: [...digits],
    report,
    width: (text, style, tabular) => faces[style.weight].width(text, style.size, tabular),
    set: (text, weight, from) => {
      const drawn = drawable(text);
      for (const character of faces[weight].lacks(drawn)) lacking(character, from);
      return drawn;
    },
  };
}

/** Composed letters, line ends and tabs as spaces, nothing invisible but what turns words, twins for what fonts seldom have. */
const drawable = (text: string): string =>
  text
    .normalize("NFC")
    .replace(/\r\n|[\t\n\v\f\r\u0085\u2028\u2029]/g, " ")
    .replace(/(?![\u061c\u200e\u200f\u2066-\u2069])\p{Default_Ignorable_Code_Point}/gu, "")
    .replace(/[\u202f\u2010\u2011]/g, (character) => twins[character] ?? character);

/** A whole number in the digits of the page's language. */
export const inDigits = (number: number, digits: string[]): string =>
  [...String(number)].map((digit) => digits[Number(digit)] ?? digit).join("");

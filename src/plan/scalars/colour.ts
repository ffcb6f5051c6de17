import { wcagContrast } from "culori";
import { scalar } from "./scalar.js";

/** WCAG 2.2, 1.4.3: words need 4.5:1 against what they stand on; an accent marks words too. */
const least = 4.5;

/** One colour as "#1c5b66", dark enough to be read on white. */
export const accent = scalar(
  { title: "Colour", description: "# and six hexadecimal digits, dark enough to read on white", examples: ["#1c5b66"] },
  (text) => {
    if (!/^#[0-9a-f]{6}$/i.test(text)) return { fault: "colour-unreadable", values: { given: text } };
    const contrast = wcagContrast(text, "#ffffff");
    // Rounded down: what is told never looks like enough.
    const told = (Math.floor(contrast * 10) / 10).toFixed(1);
    return contrast < least
      ? { fault: "colour-too-pale", values: { given: text, contrast: told } }
      : text.toLowerCase();
  },
);

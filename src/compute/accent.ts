import { converter, formatHex, wcagContrast } from "culori";
import type { Clinic } from "./facts.js";

const inLightness = converter("oklch");
/** The paper of a dark page (render/html/style/page.ts), and what words need against it (WCAG 2.2, 1.4.3). */
const darkPaper = "#14181a";
const least = 4.5;

/** The clinic's colour, and the same hue made lighter until words in it can be read on a dark page. */
export function accentOf(light: string | undefined): Clinic["accent"] {
  const colour = light === undefined ? undefined : inLightness(light);
  if (light === undefined || colour === undefined) return null;
  for (let l = Math.max(colour.l, 0.6); l < 1; l += 0.02) {
    const dark = formatHex({ ...colour, l });
    if (wcagContrast(dark, darkPaper) >= least) return { light, dark };
  }
  return { light, dark: "#ffffff" };
}

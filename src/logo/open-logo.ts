import type { Place } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import { checkSvg } from "./check-svg.js";
import { drawer } from "./draw.js";
import type { Logo } from "./logo.js";

type Source = { file: string; bytes: Uint8Array };

/** A page for a screen stays under 200 KB with all it carries; a logo may take so much of that. */
const mostOnScreen = 14 * 1024;
/** The boxes a logo is fitted into, in pixels: 600 to the inch on paper, then on a screen as fine as there is room for. */
const printBox = { width: 1250, height: 300 };
const screenBoxes = [2, 1.5, 1].map((fine) => ({ width: 180 * fine, height: 48 * fine }));
const mostPixels = 8000;

/**
 * Checks a clinic's logo and draws it. at: where the profile names it; engine: the bytes of resvg's WebAssembly.
 * An SVG may hold shapes and nothing that acts, points outside or needs a font; none of its text reaches a page, only pixels.
 * Problems: "logo-unreadable", "logo-not-plain", "logo-too-detailed".
 */
export async function openLogo(source: Source, at: Place, engine: Uint8Array): Promise<Outcome<Logo>> {
  const unreadable: Outcome<Logo> = { value: null, problems: [problem("logo-unreadable", at, { path: source.file })] };
  const svg = svgOf(source);
  if (svg === null) return unreadable;
  const problems = svg.drawn ? checkSvg(svg.text, source.file) : [];
  if (problems.length > 0) return { value: null, problems };
  const draw = await drawer(engine);
  const print = draw(svg.text, printBox);
  if (print === null) return unreadable;
  const screens = screenBoxes.flatMap((box) => draw(svg.text, box) ?? []);
  const screen = screens.find(({ png }) => png.length <= mostOnScreen);
  if (!screen) {
    const bytes = screens.at(-1)?.png.length ?? 0;
    return { value: null, problems: [problem("logo-too-detailed", at, { bytes, limit: mostOnScreen })] };
  }
  return { value: { print: print.png, screen: screen.png, width: print.width, height: print.height }, problems: [] };
}

const pngStart = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The logo as SVG: a PNG becomes the one picture in it. drawn: it was written by somebody. null: it is neither. */
function svgOf({ bytes }: Source): { text: string; drawn: boolean } | null {
  if (pngStart.every((byte, i) => bytes[i] === byte)) {
    if (bytes.length < 24) return null;
    // PNG (ISO/IEC 15948), 11.2.2: IHDR comes first and begins with width and height.
    const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const [width, height] = [header.getUint32(16), header.getUint32(20)];
    if (width < 1 || height < 1 || width > mostPixels || height > mostPixels) return null;
    const data = Buffer.from(bytes).toString("base64");
    const image = `<image width="${width}" height="${height}" href="data:image/png;base64,${data}"/>`;
    return {
      text: `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${image}</svg>`,
      drawn: false,
    };
  }
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return /<(?:\w+:)?svg[\s>]/.test(text) ? { text, drawn: true } : null;
  } catch {
    return null;
  }
}

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import type { PNG } from "pngjs";
import { averaged } from "./picture.js";
import type { Screen } from "./pictures.js";

/** Points of a page to an inch, and how much larger it is drawn. */
const inch = 40;
const times = 8;
const quiet = { stdio: "ignore" } as const;

/** The page of a PDF that has these words on it, in shades of grey. */
export function pageOf(pdf: Uint8Array, words: string, program: "pdftoppm" | "mutool" = "pdftoppm"): PNG {
  const folder = mkdtempSync(join(tmpdir(), "hearthsheet-page-"));
  try {
    const [file, drawn] = [join(folder, "handout.pdf"), join(folder, "page")];
    writeFileSync(file, pdf);
    const pages = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" }).split("\f");
    const page = String(pages.findIndex((text) => text.includes(words)) + 1);
    if (page === "0") throw new Error(`no page has "${words}"`);
    const dots = ["-r", String(inch * times)];
    if (program === "mutool")
      execFileSync("mutool", ["draw", "-q", "-c", "gray", ...dots, "-o", `${drawn}.png`, file, page], quiet);
    else
      execFileSync("pdftoppm", ["-png", "-gray", ...dots, "-f", page, "-l", page, "-singlefile", file, drawn], quiet);
    return averaged(readFileSync(`${drawn}.png`), times);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The night after the discharge: the clinic is closed. */
const at = "2026-03-06T08:10:00Z";

/** The top of a page on a phone, half as large. dots: how many the screen has to a pixel. altered: a script that changes the page first. */
export async function screenOf(
  browser: Browser,
  html: string,
  { width, colorScheme }: Pick<Screen, "width" | "colorScheme">,
  { dots = 2, altered = "" }: { dots?: number; altered?: string } = {},
): Promise<PNG> {
  const context = await browser.newContext({ viewport: { width, height: 960 }, deviceScaleFactor: dots, colorScheme });
  try {
    const page = await context.newPage();
    await page.clock.setFixedTime(new Date(at));
    await page.route("**", (route) => route.fulfill({ body: html, contentType: "text/html" }));
    await page.goto("http://handout.example/");
    await page.evaluate("document.fonts.ready");
    if (altered) await page.evaluate(altered);
    return averaged(await page.screenshot(), 2 * dots);
  } finally {
    await context.close();
  }
}

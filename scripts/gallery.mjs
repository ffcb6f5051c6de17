// Makes the pictures of the README from the examples, with the tool itself: npm run gallery
// Needs pdftoppm (poppler-utils) and Debian's chromium, as the tests do.
import { execFileSync } from "node:child_process";
import { mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const folder = mkdtempSync(join(tmpdir(), "hearthsheet-gallery-"));
const gallery = "examples/gallery";
const build = (name, ...more) => {
  const out = join(folder, name);
  const given = ["build", "examples/dog-cheek-abscess/plan.yaml", "--today", "2026-03-02", "--out", out, ...more];
  execFileSync("node", ["dist/bin/hearthsheet.js", ...given], { stdio: "ignore" });
  return out;
};
const pages = (pdf) => execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" }).split("\f");

/** The page of a PDF that holds these words, in shades of grey. */
function page(name, pdf, words) {
  const number = pages(pdf).findIndex((text) => text.includes(words)) + 1;
  if (number === 0) throw new Error(`${pdf} has no page with "${words}"`);
  const at = join(folder, name);
  const range = ["-f", String(number), "-l", String(number), "-singlefile"];
  execFileSync("pdftoppm", ["-png", "-gray", "-r", "66", ...range, pdf, at]);
  renameSync(`${at}.png`, `${gallery}/${name}.png`);
}

try {
  const english = build("en", "--language", "en");
  page("ring-next-go-now", join(english, "handout.pdf"), "Go now");
  page("collar", join(english, "handout.pdf"), "Too short");
  page("visits", join(english, "handout.pdf"), "What each visit is for");
  page("cost", join(english, "handout.pdf"), "What it may cost");
  page("arabic", join(build("ar", "--language", "ar"), "handout.pdf"), "(312)");
  page("large-print", join(build("large", "--language", "es", "--large-print"), "handout.pdf"), "(312)");

  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
  const phone = await browser.newPage({ viewport: { width: 360, height: 720 } });
  // The night after discharge, at the clinic: closed, and a dose given.
  await phone.clock.setFixedTime(new Date("2026-03-03T08:10:00Z"));
  await phone.goto(`file://${join(english, "handout.html")}`);
  writeFileSync(`${gallery}/phone.png`, await phone.screenshot());
  await browser.close();
} finally {
  rmSync(folder, { recursive: true });
}

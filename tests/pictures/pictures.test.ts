import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Handout, render } from "#index.js";
import { factsOf, handoutOf, house, whole } from "../examples/examples.js";
import { openBrowser } from "../html/browser.js";
import { type Comparison, compare } from "./compare.js";
import { pageOf, screenOf } from "./draw.js";
import { bytesOf, type Kind } from "./picture.js";
import { type Cut, papers, screens } from "./pictures.js";

/** HEARTHSHEET_PICTURES=accept (npm run pictures) writes the pictures anew: look at each before it is committed. */
const accepting = process.env["HEARTHSHEET_PICTURES"] === "accept";
const folder = "tests/pictures/accepted";
const accepted = (name: string): PNG => PNG.sync.read(readFileSync(`${folder}/${name}.png`));

/** Holds a picture to the accepted one; where it differs, the difference is in a file that the message names. */
function hold(name: string, drawn: PNG, kind: Kind): void {
  if (accepting) writeFileSync(`${folder}/${name}.png`, bytesOf(drawn, kind));
  const { alike, points, difference } = compare(accepted(name), drawn, kind);
  if (alike) return;
  const place = mkdtempSync(join(tmpdir(), "hearthsheet-picture-"));
  writeFileSync(join(place, `${name}.png`), PNG.sync.write(drawn));
  writeFileSync(join(place, `${name}-difference.png`), PNG.sync.write(difference));
  throw new Error(`${name} is not as accepted: ${points} points of a window. Look at ${place}/${name}-difference.png`);
}

const bytes = async (handout: Handout, cut: Cut, format: "pdf" | "html") =>
  whole(await render(handout, house, { ...cut, formats: [format] }))[0]?.bytes ?? new Uint8Array();
const pdfOf = (handout: Handout, cut: Cut) => bytes(handout, cut, "pdf");
const htmlOf = async (handout: Handout) =>
  new TextDecoder().decode(await bytes(handout, { paper: "letter", large: false }, "html"));

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser(["--font-render-hinting=none", "--hide-scrollbars"]);
});
afterAll(() => browser.close());

test.each(papers)("on paper: $name", async ({ name, of, language, with: words, ...cut }) => {
  hold(name, pageOf(await pdfOf(handoutOf(factsOf(of), language), cut), words), "grey");
});

test.each(screens)("on a phone: $name", async ({ name, of, language, ...screen }) => {
  hold(name, await screenOf(browser, await htmlOf(handoutOf(factsOf(of), language)), screen), "colour");
});

test("the accepted pictures are those that are compared, and small", () => {
  const names = [...papers, ...screens].map(({ name }) => `${name}.png`);
  const files = readdirSync(folder);
  expect(files.sort()).toEqual(names.sort());
  expect(files.reduce((sum, file) => sum + statSync(`${folder}/${file}`).size, 0)).toBeLessThan(400 * 1024);
});

/** What the tolerance lets pass, and what it must not. */
describe("the tolerance", () => {
  const handout = handoutOf(factsOf("dog-cheek-abscess"), "en");
  const inWords = ({ alike, points }: Comparison) => `${alike ? "alike" : "other"}: ${points}`;
  const paper = async (altered: Handout, program?: "mutool") => {
    const drawn = pageOf(await pdfOf(altered, { paper: "letter", large: false }), "60000", program);
    return inWords(compare(accepted("dog-en-first"), drawn, "grey"));
  };
  const without = (word: string): Handout => {
    const tree = JSON.stringify(handout);
    expect(tree).toContain(word);
    return JSON.parse(tree.replace(word, ""));
  };

  test("another program may draw the paper", async () => {
    expect(await paper(handout, "mutool")).toMatch("alike");
  });

  test.each([" white", " up"])("the paper does not lose the word%s", async (word) => {
    expect(await paper(without(word))).toMatch("other");
  });

  test("no block of the paper moves", async () => {
    expect(await paper({ ...handout, subtitle: [] })).toMatch("other");
  });

  describe.each(["light", "dark"] as const)("on a phone, %s", (colorScheme) => {
    const phone = async (look: { dots?: number; altered?: string }) => {
      const drawn = await screenOf(browser, await htmlOf(handout), { width: 360, colorScheme }, look);
      return inWords(compare(accepted(`dog-en-360-${colorScheme}`), drawn, "colour"));
    };

    test("a screen with more points may draw it", async () => {
      expect(await phone({ dots: 3 })).toMatch("alike");
    });

    test.each([
      ["no title moves by 4 px", "for (const h of document.querySelectorAll('h2')) h.style.translate = '4px';"],
      [
        "the word kg is not lost",
        "const p = document.querySelector('header .body'); p.textContent = p.textContent.replace(/\\skg/, '');",
      ],
      ["the colour of a button is the same", "document.documentElement.style.setProperty('--accent', '#103f88');"],
    ])("%s", async (_, altered) => {
      expect(await phone({ altered })).toMatch("other");
    });
  });
});

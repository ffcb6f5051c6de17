import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Figure } from "#handout/handout.js";
import { blocksIn, sectionsIn, wordsOf } from "#handout/walk.js";
import { type Handout, render } from "#index.js";
import { overflow, violations } from "../html/axe.js";
import { openBrowser } from "../html/browser.js";
import { readAloud } from "../html/reading.js";
import { complaints } from "../html/validator.js";
import { everyExample, factsOf, handoutOf, house, whole } from "./examples.js";

/** Each width and each scheme; every pair of them where there is time (HEARTHSHEET_LONG=1). */
const pairs = [320, 360, 768].flatMap((width) =>
  (["light", "dark"] as const).map((colorScheme) => ({ width, colorScheme })),
);
const screens = process.env["HEARTHSHEET_LONG"] ? pairs : pairs.filter((_, index) => [1, 2, 5].includes(index));

/** The headings of the sections, those of the urgent ones first. */
const inUrgentOrder = ({ sections }: Handout): string[] =>
  (["urgent", "plain"] as const).flatMap((weight) =>
    [...sectionsIn({ sections: sections.filter((section) => section.weight === weight) })].map(({ title }) =>
      wordsOf(title),
    ),
  );

const blocksNamed = (handout: Handout, id: string): Figure[] =>
  [...blocksIn(handout)].filter((block) => block.kind === "figure").filter((figure) => figure.id === id);

/** Each label that is shown, and how large its letters stand on the screen. */
const lettersInDrawings = `[...document.querySelectorAll("svg text")]
  .filter((label) => label.getClientRects().length > 0)
  .map((label) => ({
    drawing: label.ownerSVGElement.classList[0],
    text: label.textContent,
    size: parseFloat(getComputedStyle(label).fontSize) * label.getScreenCTM().a,
  }))`;

/** The morning after the dog's discharge and its first visit, and the day before the cat's. */
const at = "2026-03-04T14:30:00Z";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(everyExample)("%s in %s on a screen", (name, language) => {
  const address = "http://handout.example/";
  const handout = handoutOf(factsOf(name), language);
  let html: string;
  let page: Page;
  const requests: string[] = [];
  const said: string[] = [];

  beforeAll(async () => {
    const options = { paper: "letter", large: false, formats: ["html"] } as const;
    const [file] = whole(await render(handout, house, options));
    html = new TextDecoder().decode(file?.bytes);
    page = await browser.newPage();
    page.on("request", (request) => requests.push(request.url()));
    page.on("console", (message) => said.push(message.text()));
    await page.route(address, (route) => route.fulfill({ body: html, contentType: "text/html" }));
    await page.clock.setFixedTime(new Date(at));
    await page.goto(address);
  });
  afterAll(() => page.close());

  test("html-validate finds nothing wrong, and the file is under 200 KB", async () => {
    expect(await complaints(html)).toEqual([]);
    expect(Buffer.byteLength(html)).toBeLessThan(200_000);
  });

  test.each(screens)("axe finds no violation of WCAG 2.2 AA at $width px, $colorScheme", async (screen) => {
    await page.setViewportSize({ width: screen.width, height: 800 });
    await page.emulateMedia({ colorScheme: screen.colorScheme, media: "screen" });
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
  });

  // RNIB Clear Print and WCAG set no least size for a screen; 12 px is common practice.
  test.each([320, 360, 640, 641, 768])("words in drawings are at least 12 px at %s px", async (width) => {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ media: "screen" });
    const drawn = await page.evaluate<{ drawing: string; text: string; size: number }[]>(lettersInDrawings);
    expect(new Set(drawn.map(({ drawing }) => drawing)).size).toBeGreaterThanOrEqual(3);
    expect(drawn.filter(({ size }) => size < 12)).toEqual([]);
  });

  test("axe finds no violation on paper", async () => {
    await page.emulateMedia({ colorScheme: "light", media: "print" });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ media: "screen" });
  });

  test("a screen reader meets everything by name and in the order of the handout", async () => {
    const met = await readAloud(page);
    const names = (role: string) => met.filter((node) => node.role === role).map(({ name }) => name);
    const headings = met.filter(({ role }) => role === "heading");
    const levels = headings.map(({ level }) => level ?? 0);
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, i) => i > 0 && level > (levels[i - 1] ?? 0) + 1)).toEqual([]);
    expect(headings.map(({ name }) => name).slice(0, 2)).toEqual([handout.title, handout.live?.words.title]);
    // What came next when the page was made gives way to what its top tells, once it can: not before the discharge.
    const gone = at.slice(0, 10) < handout.issued.slice(0, 10) ? "" : "next";
    const sections = inUrgentOrder({ ...handout, sections: handout.sections.filter(({ id }) => id !== gone) });
    expect(headings.slice(-sections.length).map(({ name }) => name)).toEqual(sections);
    for (const role of ["banner", "main", "navigation", "contentinfo"]) expect(names(role)).toHaveLength(1);
    for (const role of ["link", "button", "checkbox", "table", "image", "columnheader"])
      expect([role, names(role).filter((name) => name === "")]).toEqual([role, []]);
    // Each dose of the chart is ticked by a name of its own.
    const boxes = names("checkbox");
    const doses = (handout.live?.doses ?? []).length;
    expect(new Set(boxes).size).toBeGreaterThanOrEqual(doses);
    expect(names("link").filter((name) => /\d{3}.\d{4}/.test(name)).length).toBeGreaterThanOrEqual(3);
    expect(met.filter(({ role }) => role === "list").length).toBeGreaterThan(5);
  });

  test("the days of the week over a month are not broken at 320 px", async () => {
    await page.setViewportSize({ width: 320, height: 800 });
    const broken = await page.evaluate(
      `[...document.querySelectorAll(".month th span:first-child")].filter((e) => e.getClientRects().length > 1).map((e) => e.textContent)`,
    );
    expect(await page.locator(".month th").count()).toBeGreaterThanOrEqual(7);
    expect(broken).toEqual([]);
  });

  test("a drawing for a narrow screen has the words of the wide one, and a code to scan is not on it", async () => {
    const pictures = async (width: number) => {
      await page.setViewportSize({ width, height: 800 });
      return (await readAloud(page)).filter(({ role }) => role === "image").map(({ name }) => name);
    };
    const wide = await pictures(768);
    const code = blocksNamed(handout, "visit-code").map(({ alt }) => alt);
    expect(wide).toEqual(expect.arrayContaining(code));
    expect(await pictures(320)).toEqual(wide.filter((name) => !code.includes(name)));
  });

  test("no request leaves it, and its policy had nothing to stop", () => {
    expect(requests.filter((url) => !url.startsWith("data:"))).toEqual([address]);
    expect(said).toEqual([]);
  });
});

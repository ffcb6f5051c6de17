import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { renderHtml } from "#render/html/html.js";
import { everyNode, hostile } from "../handouts/every-node.js";
import { overflow, violations } from "./axe.js";
import { openBrowser } from "./browser.js";
import { fonts } from "./fonts.js";

const html = renderHtml(everyNode, { fonts });

let browser: Browser;
let page: Page;
const requests: string[] = [];
const said: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
  page.on("request", (request) => requests.push(request.url()));
  page.on("console", (message) => said.push(message.text()));
  // Served rather than set, so that the policy in the page is obeyed and a request for an icon would be seen.
  await page.route("http://handout.example/", (route) => route.fulfill({ body: html, contentType: "text/html" }));
  await page.goto("http://handout.example/");
});
afterAll(() => browser.close());

describe.each([320, 360, 768])("at %i px", (width) => {
  test.each(["light", "dark"] as const)("axe finds no violation of WCAG 2.2 AA in %s mode", async (colorScheme) => {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme, media: "screen" });
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
  });
});

test("axe finds no violation on paper", async () => {
  await page.emulateMedia({ colorScheme: "light", media: "print" });
  expect(await violations(page)).toEqual([]);
  await page.emulateMedia({ media: "screen" });
});

// WCAG 1.4.12: line height 1.5, paragraphs 2, letters 0.12 and words 0.16 times the size of the text.
test("nothing is lost when a reader spaces the text out at 320 px", async () => {
  await page.setViewportSize({ width: 320, height: 800 });
  const spaced =
    "*{line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important}p{margin-bottom:2em!important}";
  await page.evaluate(
    `const sheet = new CSSStyleSheet(); sheet.replaceSync("${spaced}"); document.adoptedStyleSheets = [sheet];`,
  );
  const cut = await page.evaluate(
    `[...document.querySelectorAll("body *:not(.aside, .aside *, svg *, :has(svg))")]
      .filter((e) => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline")
      .map((e) => e.outerHTML)`,
  );
  expect(await overflow(page)).toBe(0);
  expect(cut).toEqual([]);
  await page.evaluate("document.adoptedStyleSheets = []");
});

// WCAG 2.5.8: targets of at least 24 by 24 px; a phone that stands alone is as tall as a finger (44 px).
test("everything to press is large enough", async () => {
  await page.setViewportSize({ width: 360, height: 800 });
  const sizes = await page.evaluate<{ name: string; width: number; height: number }[]>(
    `[...document.querySelectorAll("a, input")].map((e) => {
      const { width, height } = e.getBoundingClientRect();
      return { name: e.outerHTML, width, height };
    })`,
  );
  expect(sizes.length).toBeGreaterThan(10);
  expect(sizes.filter(({ width, height }) => width < 24 || height < 24)).toEqual([]);
  const alone = await page.locator(".ring > a").boundingBox();
  expect(alone?.height).toBeGreaterThan(44);
  expect(alone?.width).toBeGreaterThan(200);
});

test("a phone shows its text at 18 px or more, and small print at 16", async () => {
  await page.setViewportSize({ width: 360, height: 800 });
  const small = await page.evaluate(
    `[...document.querySelectorAll("main p.body, main li, main label, main h2, main h3")]
      .filter((e) => !e.closest(".legend") && parseFloat(getComputedStyle(e).fontSize) < 18)
      .map((e) => e.outerHTML)`,
  );
  expect(small).toEqual([]);
  const tiny = await page.evaluate(
    `[...document.querySelectorAll("p, span, figcaption, address, td")]
      .filter((e) => !e.closest(".month, .aside") && parseFloat(getComputedStyle(e).fontSize) < 16)
      .map((e) => e.outerHTML)`,
  );
  expect(tiny).toEqual([]);
});

test("a tick can be set with no script, by pressing its words", async () => {
  const label = page.getByText("Look at the bandage.");
  await label.click();
  expect(await page.getByLabel("Look at the bandage.").isChecked()).toBe(true);
});

test("a screen reader meets the whole page in order", async () => {
  const tree = await page.locator("body").ariaSnapshot();
  const headings = [...tree.matchAll(/heading "(.*)" \[level=(\d)\]/g)].map(([, , level]) => Number(level));
  expect(headings[0]).toBe(1);
  expect(headings.filter((level, index) => index > 0 && level > (headings[index - 1] ?? 0) + 1)).toEqual([]);
  expect(tree).toContain('link "(312) 555-0142"');
  expect(tree).toContain('img "A cone seen from the side. Its rim passes the nose by 2 cm."');
  expect(tree).toContain("Tuesday 3 March, Visit booked");
  expect(tree).toContain('columnheader "Tuesday"');
  expect(tree).toMatch(/checkbox "Look at the bandage/);
  expect(tree).toContain('checkbox "3 March, 8 AM"');
});

test("what a person wrote is printed as it was written", async () => {
  const literal = hostile.replace(/\s+/g, " ");
  expect(await page.title()).toContain(literal);
  expect((await page.locator("h1").textContent())?.replace(/\s+/g, " ")).toContain(literal);
  expect(await page.locator("b").count()).toBe(0);
});

test("no request leaves the page, and the policy had nothing to stop", () => {
  expect(requests.filter((url) => !url.startsWith("data:"))).toEqual(["http://handout.example/"]);
  expect(said).toEqual([]);
});

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { render } from "#index.js";
import { overflow, violations } from "../html/axe.js";
import { openBrowser } from "../html/browser.js";
import { complaints } from "../html/validator.js";
import { everyExample, factsOf, handoutOf, house, whole } from "./examples.js";

/** Each width and each scheme; every pair of them where there is time (HEARTHSHEET_LONG=1). */
const pairs = [320, 360, 768].flatMap((width) =>
  (["light", "dark"] as const).map((colorScheme) => ({ width, colorScheme })),
);
const screens = process.env["HEARTHSHEET_LONG"] ? pairs : pairs.filter((_, index) => [1, 2, 5].includes(index));

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(everyExample)("%s in %s on a screen", (name, language) => {
  const address = "http://handout.example/";
  let html: string;
  let page: Page;
  const requests: string[] = [];
  const said: string[] = [];

  beforeAll(async () => {
    const options = { paper: "letter", large: false, formats: ["html"] } as const;
    const [file] = whole(await render(handoutOf(factsOf(name), language), house, options));
    html = new TextDecoder().decode(file?.bytes);
    page = await browser.newPage();
    page.on("request", (request) => requests.push(request.url()));
    page.on("console", (message) => said.push(message.text()));
    await page.route(address, (route) => route.fulfill({ body: html, contentType: "text/html" }));
    await page.goto(address);
  });
  afterAll(() => page.close());

  test("html-validate finds nothing wrong, and the file is under 200 KB", async () => {
    expect(await complaints(html)).toEqual([]);
    expect(Buffer.byteLength(html)).toBeLessThan(200 * 1024);
  });

  test.each(screens)("axe finds no violation of WCAG 2.2 AA at $width px, $colorScheme", async (screen) => {
    await page.setViewportSize({ width: screen.width, height: 800 });
    await page.emulateMedia({ colorScheme: screen.colorScheme, media: "screen" });
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
  });

  test("axe finds no violation on paper", async () => {
    await page.emulateMedia({ colorScheme: "light", media: "print" });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ media: "screen" });
  });

  test("no request leaves it, and its policy had nothing to stop", () => {
    expect(requests.filter((url) => !url.startsWith("data:"))).toEqual([address]);
    expect(said).toEqual([]);
  });
});

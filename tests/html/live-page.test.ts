import { createHash } from "node:crypto";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { renderCalendar } from "#render/calendar/calendar.js";
import { renderHtml } from "#render/html/html.js";
import { everyNode } from "../handouts/every-node.js";
import { live } from "../handouts/live.js";
import { violations } from "./axe.js";
import { openBrowser } from "./browser.js";
import { fonts } from "./fonts.js";
import { complaints } from "./validator.js";

const calendar = renderCalendar(everyNode);
const handout: Handout = { ...everyNode, live };
const draw = (changes: Partial<Handout> = {}) => renderHtml({ ...handout, ...changes }, { fonts, calendar });
const html = draw();
const address = "http://handout.example/";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** The page on a device of its own, at an instant, with all that the browser said of it. */
async function onDevice(
  now: string,
  { body = html, before, ...options }: BrowserContextOptions & { body?: string; before?: string } = {},
): Promise<{ page: Page; said: string[] }> {
  const context = await browser.newContext({ viewport: { width: 360, height: 800 }, ...options });
  const page = await context.newPage();
  const said: string[] = [];
  page.on("console", (message) => said.push(message.text()));
  page.on("pageerror", (error) => said.push(error.message));
  page.on("request", (request) => {
    const url = request.url();
    if (url !== address && !url.startsWith("data:")) said.push(url);
  });
  if (before) await page.addInitScript(before);
  if (options.javaScriptEnabled !== false) await page.clock.setFixedTime(new Date(now));
  await page.route(address, (route) => route.fulfill({ body, contentType: "text/html" }));
  await page.goto(address);
  return { page, said };
}

const lead = (page: Page) => page.locator(".now > .lead").first().textContent();
const number = (page: Page) => page.locator(".now .ring").allTextContents();

describe("the clinic in Chicago, seen", () => {
  // A week without Sundays opens at 08:00; the hands go from 2 to 3 on 8 March 2026 and from 2 to 1 on 1 November.
  const sundays = live.week.flatMap((stretch) =>
    stretch.weekday === 1 ? [{ ...stretch, weekday: 7, open: "03:00", close: "04:00", now: "Open this night" }] : [],
  );
  const body = draw({ live: { ...live, week: sundays, known: { from: "2026-03-02", to: "2026-12-31" } } });
  test.each([
    ["America/Chicago", "2026-03-08T07:59:00Z", "Opens today 08:00"],
    ["America/Chicago", "2026-03-08T08:00:00Z", "Open this night"],
    ["America/Chicago", "2026-03-08T09:00:00Z", "Opens Mon 08:00"],
    ["America/Chicago", "2026-11-01T08:30:00Z", "Opens today 08:00"],
    ["America/Chicago", "2026-11-01T09:00:00Z", "Open this night"],
    ["Asia/Tokyo", "2026-03-08T08:00:00Z", "Open this night"],
    ["Pacific/Honolulu", "2026-03-08T08:00:00Z", "Open this night"],
    ["Europe/Madrid", "2026-11-01T09:00:00Z", "Open this night"],
  ])("on a device in %s at %s: %s", async (timezoneId, now, said) => {
    const { page } = await onDevice(now, { timezoneId, body });
    // After it closes on Sunday it opens a week later, which no name of a day tells.
    expect(await lead(page)).toBe(said === "Opens Mon 08:00" ? "Closed now" : said);
    await page.context().close();
  });
});

test("the top tells what counts now, and moves on while the page is open", async () => {
  // 07:59:50 in Chicago on 3 March, before its clocks change: six hours behind Greenwich.
  const { page, said } = await onDevice("2026-03-03T13:59:50Z", { timezoneId: "Asia/Tokyo" });
  await page.clock.install({ time: new Date("2026-03-03T13:59:50Z") });
  await page.reload();
  expect(await lead(page)).toBe("Opens today 08:00");
  expect(await number(page)).toEqual(["(312) 555-0187"]);
  await page.clock.runFor(30_000);
  expect(await lead(page)).toBe("Open now until 18:00");
  expect(await number(page)).toEqual(["(312) 555-0142"]);
  expect(await page.locator(".now h3").allTextContents()).toEqual([
    "Due now",
    "Next medicine",
    "Next visit",
    "Morning",
  ]);
  expect(await page.locator(".now h2").textContent()).toBe("Right now");
  expect(said).toEqual([]);
  await page.context().close();
});

test("what came next when it was made gives way to what comes next now, but not on paper or where the day is not known", async () => {
  const shown = async (now: string, media: "screen" | "print") => {
    const { page } = await onDevice(now);
    await page.emulateMedia({ media });
    const visible = await page.locator("#next").isVisible();
    await page.context().close();
    return visible;
  };
  expect(await shown("2026-03-04T08:00:00Z", "screen")).toBe(false);
  expect(await shown("2026-03-18T08:00:00Z", "screen")).toBe(false);
  expect(await shown("2026-03-04T08:00:00Z", "print")).toBe(true);
  expect(await shown("2026-02-28T08:00:00Z", "screen")).toBe(true);
});

test("ticks stay on the device, for their case and revision, and a step is new each day", async () => {
  const { page, said } = await onDevice("2026-03-03T14:30:00Z");
  const [dose, step, own] = ["today 08:00 · amox 1", "Look at the bandage.", "3 March, 8 AM"];
  const top = page.locator(".now");
  await top.getByLabel(dose).check();
  await top.getByLabel(step).check();
  await page.getByLabel("Look at the bandage. It should be dry.").check();
  await page.reload();
  expect(await top.getByLabel(dose).count()).toBe(0);
  expect(await top.getByLabel("today 08:00 · carp 1").isChecked()).toBe(false);
  expect(await top.getByLabel(step).isChecked()).toBe(true);
  expect(await page.getByLabel("Look at the bandage. It should be dry.").isChecked()).toBe(true);
  expect(await page.getByLabel(own).isChecked()).toBe(false);
  expect(await page.evaluate("Object.keys(localStorage)")).toEqual([live.key]);

  await page.clock.setFixedTime(new Date("2026-03-04T14:30:00Z"));
  await page.reload();
  expect(await top.getByLabel(step).isChecked()).toBe(false);
  expect(await page.getByLabel("Look at the bandage. It should be dry.").isChecked()).toBe(false);
  expect(said).toEqual([]);
  await page.context().close();
});

test.each([
  ["forbids storage", "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no') } })"],
  ["is full", "Storage.prototype.setItem = () => { throw new Error('full') }"],
  ["holds something else", `localStorage.setItem(${JSON.stringify(live.key)}, '{"a":')`],
])("a device that %s loses no more than the ticks", async (_, before) => {
  const { page, said } = await onDevice("2026-03-03T14:30:00Z", { before });
  await page.locator(".now").getByLabel("amox 1").check();
  expect(await page.locator(".now").getByLabel("amox 1").isChecked()).toBe(true);
  expect(await lead(page)).toBe("Open now until 18:00");
  expect(said).toEqual([]);
  await page.context().close();
});

test("the calendar can be saved and the page printed, and nothing in the words becomes markup", async () => {
  const { page, said } = await onDevice("2026-03-03T14:30:00Z", {
    before: "window.print = () => { window.printed = true }",
  });
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByText("Save the visits").click()]);
  expect(download.suggestedFilename()).toBe("rechecks.ics");
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(Buffer.from(chunk));
  expect(Buffer.concat(chunks).toString()).toBe(calendar);
  await page.getByRole("button", { name: "Print" }).click();
  expect(await page.evaluate("window.printed")).toBe(true);
  expect(await page.locator(".now p").nth(1).textContent()).toBe("Ring Juniper Row </script><b> Animal Clinic:");
  expect(await page.locator("b").count()).toBe(0);
  expect(said).toEqual([]);
  await page.context().close();
});

test("without a script the page is whole, and its calendar can still be saved", async () => {
  const { page, said } = await onDevice("", { javaScriptEnabled: false });
  expect(await page.locator(".now, button").count()).toBe(0);
  expect(await page.locator("main > section:visible").count()).toBe(everyNode.sections.length);
  expect(await page.locator("#tools a").getAttribute("download")).toBe("rechecks.ics");
  expect(said).toEqual([]);
  await page.context().close();
});

test.each(["light", "dark"] as const)(
  "axe and html-validate find no violation with the top shown, %s",
  async (colorScheme) => {
    const { page } = await onDevice("2026-03-03T18:30:00Z", { colorScheme });
    expect(await page.locator(".now h3").allTextContents()).toEqual([
      "Given?",
      "Next medicine",
      "Next visit",
      "Evening",
    ]);
    expect(await violations(page)).toEqual([]);
    expect(await complaints(await page.content())).toEqual([]);
    await page.context().close();
  },
);

test("the policy allows its two elements by their hashes, and the script runs by no other leave", () => {
  const of = (pattern: RegExp) =>
    createHash("sha256")
      .update(pattern.exec(html)?.[1] ?? "")
      .digest("base64");
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1]?.replaceAll("&#x27;", "'");
  expect(policy?.split("; ").slice(0, 3)).toEqual([
    "default-src 'none'",
    `script-src 'sha256-${of(/<script>([\s\S]*?)<\/script>/)}'`,
    `style-src 'sha256-${of(/<style>([\s\S]*?)<\/style>/)}'`,
  ]);
  expect(html.match(/<script/g)).toHaveLength(2);
});

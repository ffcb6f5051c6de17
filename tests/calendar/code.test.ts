import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ICAL from "ical.js";
import jsqr from "jsqr";
import { describe, expect, test } from "vitest";
import type { Figure, Handout } from "#handout/handout.js";
import { renderHtml } from "#render/html/html.js";
import { renderPdf } from "#render/pdf/pdf.js";
import { dog } from "../compose/fixture.js";
import { composed } from "../compose/shipped.js";

const font = (file: string) => new Uint8Array(readFileSync(file));
const fonts = {
  regular: font(
    "node_modules/@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
  ),
  bold: font("node_modules/@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf"),
};

/** What jsQR reads from a picture of grey values. */
function decoded(grey: (x: number, y: number) => number, width: number, height: number): string | undefined {
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let index = 0; index < width * height; index++) {
    const value = grey(index % width, Math.floor(index / width));
    for (const colour of [0, 1, 2]) pixels[index * 4 + colour] = value;
  }
  return jsqr.default(pixels, width, height)?.data;
}

/** Each page of a PDF as poppler draws it on paper, 150 dots to the inch. */
function pages(pdf: Uint8Array, count: number): { bytes: Buffer; width: number; height: number }[] {
  const folder = mkdtempSync(join(tmpdir(), "hearthsheet-code-"));
  try {
    writeFileSync(join(folder, "handout.pdf"), pdf);
    return Array.from({ length: count }, (_, i) => {
      const page = String(i + 1);
      const args = [
        "-r",
        "150",
        "-gray",
        "-singlefile",
        "-f",
        page,
        "-l",
        page,
        join(folder, "handout.pdf"),
        join(folder, "p"),
      ];
      execFileSync("pdftoppm", args);
      const bytes = readFileSync(join(folder, "p.pgm"));
      const [, width = 0, height = 0] = bytes.subarray(0, 30).toString("latin1").split(/\s+/).map(Number);
      return { bytes: bytes.subarray(bytes.length - width * height), width, height };
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const handout = composed(dog, "en").value as Handout;
const section = handout.sections.find(({ id }) => id === "calendar");
const figure = section?.blocks.find((block): block is Figure => block.kind === "figure" && block.id === "visit-code");

/** The visit that the code saves, as ical.js reads it. */
function visitIn(text: string | undefined) {
  ICAL.design.strict = true;
  const event = new ICAL.Component(ICAL.parse(text ?? "")).getFirstSubcomponent("vevent");
  const value = (name: string) => String(event?.getFirstPropertyValue(name));
  return { uid: value("uid"), start: value("dtstart"), end: value("dtend"), summary: value("summary") };
}

const [next] = handout.events;
const expected = {
  uid: next?.uid,
  // 9:30 in Chicago before 8 March is 15:30 UTC.
  start: "2026-03-03T15:30:00Z",
  end: "2026-03-03T15:50:00Z",
  summary: next?.summary,
};

describe("the code for a phone's camera", () => {
  test("is read from the printed page", { timeout: 60_000 }, async () => {
    const only = { ...handout, sections: section ? [section] : [] };
    const { value } = await renderPdf(only, { paper: "letter", large: false, fonts: [fonts] });
    const [text] = pages(value ?? new Uint8Array(), 2).flatMap(
      ({ bytes, width, height }) => decoded((x, y) => bytes[y * width + x] ?? 255, width, height) ?? [],
    );
    expect(visitIn(text)).toEqual(expected);
  });

  test("is the same in the HTML, whose path is drawn here", () => {
    const html = renderHtml(handout, { fonts: [fonts] });
    const [, drawing = ""] = /<svg class="visit-code"([\s\S]*?)<\/svg>/.exec(html) ?? [];
    const [, path = ""] = / d="([^"]*)"/.exec(drawing) ?? [];
    const unit = Number(/ stroke-width="(\d+)"/.exec(drawing)?.[1]);
    // Level lines, each begun where the one before it ended.
    let [pen, middle] = [0, 0];
    const boxes = [...path.matchAll(/m(-?[\d.]+)[ -]?(-?[\d.]+)h([\d.]+)/gi)].map(([, ...numbers]) => {
      const [x = 0, y = 0, length = 0] = numbers.map(Number);
      const from = pen + x;
      middle += y;
      pen = from + length;
      return [from, middle - unit / 2, pen, middle + unit / 2];
    });
    expect(path.replace(/[Mm]-?[\d.]+ ?-?[\d.]+h[\d.]+/g, "")).toBe("");
    const scale = 5;
    const side = Math.ceil((figure?.height ?? 0) * scale);
    const dark = (x: number, y: number) =>
      boxes.some(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => x1 <= x && x < x2 && y1 <= y && y < y2);
    const text = decoded((x, y) => (dark((x + 0.5) / scale, (y + 0.5) / scale) ? 0 : 255), side, side);
    expect(visitIn(text)).toEqual(expected);
  });

  test("has words beside it, and is described; there is none where the next visit is not booked", () => {
    expect(figure?.labels.map(({ text }) => text)).toEqual([
      "Scan this with your phone.",
      "It saves your next visit:",
      "Tue, Mar\u00a03, 9:30\u00a0AM",
    ]);
    expect(figure?.alt).toContain("Tuesday, March\u00a03 at 9:30\u00a0AM");
    const [, , , later = null] = dog.course.visits;
    const unbooked = composed({ ...dog, next: { ...dog.next, visit: later } }, "en").value as Handout;
    expect(JSON.stringify(unbooked.sections)).not.toContain("visit-code");
  });
});

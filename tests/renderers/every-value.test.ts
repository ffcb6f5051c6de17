import { readFileSync } from "node:fs";
import fc from "fast-check";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { TextContent } from "pdfjs-dist/types/src/display/api.js";
import { describe, expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import type { Outcome } from "#problems/problem.js";
import { renderCalendar } from "#render/calendar/calendar.js";
import { renderHtml } from "#render/html/html.js";
import { renderPdf } from "#render/pdf/pdf.js";
import { renderText } from "#render/text/text.js";
import { everyNode } from "../handouts/every-node.js";
import { randomHandout, valuesOf } from "../handouts/random.js";
import { fonts } from "../html/fonts.js";

// What a reader of each format sees, taken from its bytes without asking the renderer.
const readings: Record<string, (handout: Handout) => string | Promise<string>> = {
  html: (handout) => wordsOfHtml(renderHtml(handout, { fonts })),
  text: renderText,
  pdf: (handout) => wordsOfPdf(renderPdf(handout, { paper: "a4", large: false, fonts: pdfFonts })),
};

const bytes: Record<string, (handout: Handout) => unknown> = {
  html: (handout) => renderHtml(handout, { fonts }),
  text: renderText,
  pdf: (handout) => renderPdf(handout, { paper: "a4", large: false, fonts: pdfFonts }),
  calendar: renderCalendar,
};

const wordsOfHtml = (html: string): string =>
  html
    .slice(html.indexOf("<body>"))
    .replace(/<[^>]*>/g, "")
    .replace(/&#x([0-9a-f]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

const pdfFont = (folder: string): Uint8Array =>
  readFileSync(
    new URL(
      `../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/${folder}/AtkinsonHyperlegibleNext_${folder}.ttf`,
      import.meta.url,
    ),
  );
const pdfFonts = [{ regular: pdfFont("400Regular"), bold: pdfFont("700Bold") }];

const wordsOfPdf = async ({ value, problems }: Outcome<Uint8Array>): Promise<string> => {
  expect(problems).toEqual([]);
  const document = await getDocument({ data: new Uint8Array(value ?? []), verbosity: 0 }).promise;
  const pages = Array.from({ length: document.numPages }, async (_, index) => {
    const { items } = await (await document.getPage(index + 1)).getTextContent({ includeMarkedContent: true });
    return withoutArtifacts(items).join(" ");
  });
  return (await Promise.all(pages)).join(" ");
};

/** A value may run on over a page; the lines at the head and foot between its halves are marked as not part of the text. */
const withoutArtifacts = (items: TextContent["items"]): string[] => {
  const open: string[] = [];
  return items.flatMap((item) => {
    if ("str" in item) return open.includes("Artifact") ? [] : [item.str];
    if (item.type === "endMarkedContent") open.pop();
    else open.push("tag" in item ? String(item.tag) : "");
    return [];
  });
};

// A format breaks lines where it likes, and a plain-text line cannot hold a control character.
const bare = (words: string): string => words.replace(/[\s\p{Cc}]+/gu, "");

const missing = (handout: Handout, reading: string): string[] => {
  const seen = bare(reading);
  return valuesOf(handout).filter((value) => !seen.includes(bare(value)));
};

describe.each(Object.entries(readings))("%s", (_, read) => {
  test("prints every value of the handout with every kind of node", async () => {
    expect(valuesOf(everyNode).length).toBeGreaterThan(50);
    expect(missing(everyNode, await read(everyNode))).toEqual([]);
  });

  test("prints every dose, statement, date, amount and phone of a random handout", async () => {
    await fc.assert(
      fc.asyncProperty(randomHandout(), async (handout) => {
        expect(missing(handout, await read(handout))).toEqual([]);
      }),
      { numRuns: 30, endOnFailure: true },
    );
  });
});

describe.each(Object.entries(bytes))("%s", (_, render) => {
  test("gives the same bytes for the same handout", () => {
    expect(render(structuredClone(everyNode))).toEqual(render(everyNode));
  });
});

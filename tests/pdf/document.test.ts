import { readFileSync } from "node:fs";
import { queryObjects } from "node:v8";
import PDFDocument from "pdfkit";
import { describe, expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { renderPdf } from "#render/pdf/pdf.js";
import { everyNode } from "../handouts/every-node.js";
import { paperDog } from "../handouts/paper-dog.js";
import { cuts, fonts, pdfOf, tool, xmlText } from "./help.js";
import { Objects } from "./objects.js";

const titled = (title: string): Handout => ({ ...paperDog, title });
const xmpOf = (bytes: Uint8Array): string => {
  const objects = new Objects(bytes);
  return objects.stream(objects.catalog["/Metadata"]).toString("utf8");
};
const rdf = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}";

describe.each([
  ["a dog's sheet", paperDog],
  ["every kind of node", everyNode],
])("%s", (_, handout) => {
  test.each(cuts)("is sound to qpdf and mutool: $paper, large $large", (cut) => {
    const bytes = pdfOf(handout, cut);
    expect(tool("qpdf", ["--check", "FILE"], bytes).status).toBe(0);
    const cleaned = tool("mutool", ["clean", "-s", "FILE", "clean.pdf"], bytes);
    expect(cleaned).toEqual({ out: "", status: 0 });
  });

  test("embeds two weights, as subsets with a character map (pdffonts)", () => {
    const rows = tool("pdffonts", ["FILE"], pdfOf(handout)).out.trim().split("\n").slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows) expect(row).toMatch(/AtkinsonHyperlegibleNext-\w+ +CID TrueType +Identity-H +yes yes yes/);
  });

  test("gives the same bytes again, also after other documents", () => {
    const before = pdfOf(handout);
    pdfOf(titled("Another - with a no-break\u00a0space, a hyphen\u2011twin and Zzz"));
    pdfOf(everyNode, { paper: "a4", large: true });
    expect(Buffer.from(pdfOf(handout)).equals(Buffer.from(before))).toBe(true);
    // Also with fonts that were never used before.
    const fresh = fonts.map(({ regular, bold }) => ({ regular: regular.slice(), bold: bold.slice() }));
    const { value } = renderPdf(handout, { paper: "letter", large: false, fonts: fresh });
    expect(Buffer.from(value ?? []).equals(Buffer.from(before))).toBe(true);
  });
});

test("a letter means what it says, whatever was drawn with its shape before: the i of Yıldız", () => {
  const before = pdfOf(titled("Yıldız goes home"));
  const fresh = fonts.map(({ regular, bold }) => ({ regular: regular.slice(), bold: bold.slice() }));
  const render = (title: string) =>
    renderPdf(titled(title), { paper: "letter", large: false, fonts: fresh }).value ?? [];
  // fontkit draws an i with a dot set by hand as the dotless i and a dot.
  render("i\u0307");
  expect(Buffer.from(render("Yıldız goes home")).equals(Buffer.from(before))).toBe(true);
});

test.each(["Bella & Max <home>", `"quotes" & 'more' ]]> <b>`, "line\r\nbreak", "Ñandú ½ €"])(
  "XMP is well-formed and holds the title %j",
  (title) => {
    const text = xmlText(xmpOf(pdfOf(titled(title))), "{http://purl.org/dc/elements/1.1/}title");
    expect(text[`${rdf}li`]).toEqual([title.replace("\r\n", " ")]);
  },
);

test("XMP names PDF/UA-1", () => {
  const text = xmlText(xmpOf(pdfOf(paperDog)));
  expect(text["{http://www.aiim.org/pdfua/ns/id/}part"]).toEqual(["1"]);
});

test("is dated when it was handed over, on the clinic's clock: 16:30 in Chicago is 22:30 UTC", () => {
  const objects = new Objects(pdfOf(paperDog));
  const info = objects.dict(objects.trailer["/Info"]);
  expect(objects.at(info["/CreationDate"])).toBe("u:D:20260302223000Z");
  expect(objects.at(info["/ModDate"])).toBe("u:D:20260302223000Z");
});

test("has an identity of its content", () => {
  const id = (handout: Handout, large = false) =>
    JSON.stringify(new Objects(pdfOf(handout, { paper: "letter", large })).trailer["/ID"]);
  expect(id(paperDog)).toBe(id(structuredClone(paperDog)));
  expect(id(paperDog)).not.toBe(id(titled("Bramble goes home.")));
  expect(id(paperDog)).not.toBe(id(paperDog, true));
});

test("a sheet of more than four pages has a bookmark for every title, a shorter one has none", () => {
  const objects = new Objects(pdfOf(paperDog));
  expect(objects.pages.length).toBeGreaterThan(4);
  const titles = objects.all.flatMap((dict) => ("/Dest" in dict && "/Title" in dict ? [String(dict["/Title"])] : []));
  expect(titles).toContain("u:Go now if you see any of these");
  expect(titles).toContain("u:Each evening");
  const short = new Objects(pdfOf({ ...paperDog, sections: paperDog.sections.slice(0, 3) }));
  expect(short.pages.length).toBeLessThanOrEqual(4);
  expect(short.catalog["/Outlines"]).toBeUndefined();
});

test("leans on private members of pdfkit that were read in this version", () => {
  expect(JSON.parse(readFileSync("node_modules/pdfkit/package.json", "utf8")).version).toBe("0.20.2");
});

test("lets go of each document once its bytes are out, with no turn of the event loop between", () => {
  const held = () => queryObjects(PDFDocument, { format: "count" });
  const before = held();
  for (const title of ["one", "two", "three"]) pdfOf(titled(title));
  expect(held() - before).toBeLessThanOrEqual(1);
});

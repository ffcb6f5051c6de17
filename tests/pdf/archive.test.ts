import { describe, expect, test } from "vitest";
import { everyNode } from "../handouts/every-node.js";
import { paperDog } from "../handouts/paper-dog.js";
import { pdfOf, tool, xmlText } from "./help.js";
import { Objects } from "./objects.js";

/**
 * PDF/A-2, conformance level A (ISO 19005-2), by its clauses, from memory of them: as far as they can apply to what is made
 * here and are not PDF/UA's too, which ./matterhorn.test.ts holds. No validator was at hand.
 */
describe.each([
  ["a dog's sheet", paperDog],
  ["every kind of node", everyNode],
])("%s", (_, handout) => {
  const bytes = pdfOf(handout);
  const objects = new Objects(bytes);
  const { catalog, trailer, pages } = objects;
  const xmp = xmlText(objects.stream(catalog["/Metadata"]).toString("utf8"));

  test("6.1.2 the header is followed by a comment of four bytes over 127", () => {
    const start = Buffer.from(bytes.slice(0, 24));
    const line = start.indexOf(0x0a) + 1;
    expect(String.fromCharCode(start[line] ?? 0)).toBe("%");
    for (const at of [1, 2, 3, 4]) expect(start[line + at]).toBeGreaterThan(127);
  });

  test("6.1.3 the trailer has an ID and is not encrypted", () => {
    expect(objects.list(trailer["/ID"])).toHaveLength(2);
    expect(trailer["/Encrypt"]).toBeUndefined();
  });

  test("6.2.3 an output intent with an RGB profile of its own", () => {
    const [intent] = objects.list(catalog["/OutputIntents"]).map((one) => objects.dict(one));
    expect(intent?.["/S"]).toBe("/GTS_PDFA1");
    const profile = intent?.["/DestOutputProfile"];
    expect(objects.dict(profile)["/N"]).toBe(3);
    // ICC.1, 7.2: the signature "acsp" at 36, the colour space of the data at 16.
    const icc = objects.stream(profile).toString("latin1");
    expect([icc.slice(36, 40), icc.slice(16, 20)]).toEqual(["acsp", "RGB "]);
  });

  test("6.2.8, 6.1.7 no picture from elsewhere, no LZW", () => {
    const { out } = tool("qpdf", ["--json=2", "FILE"], bytes);
    expect(out).not.toMatch(/"\/LZWDecode"|"\/Alternates"|"\/OPI"|"\/F": "u:/);
  });

  test("6.3.2 every annotation is printed, and none is hidden", () => {
    const annotations = pages.flatMap(({ page }) => objects.list(page["/Annots"]).map((one) => objects.dict(one)));
    for (const annotation of annotations) expect(annotation["/F"]).toBe(4);
    expect(annotations.length).toBeGreaterThan(0);
  });

  test("6.5.1, 6.4, 6.8 no script, form, file or action but a link", () => {
    for (const name of ["/AA", "/OpenAction", "/AcroForm"]) expect(catalog[name]).toBeUndefined();
    // Named places are allowed; named scripts and files are not.
    expect(Object.keys(objects.dict(catalog["/Names"])).filter((name) => name !== "/Dests")).toEqual([]);
    const { out } = tool("qpdf", ["--json=2", "FILE"], bytes);
    const actions = [...out.matchAll(/"\/S": "(\/(?:URI|GoTo|JavaScript|Launch|SubmitForm|ImportData|Sound|Movie))"/g)];
    expect(new Set(actions.map(([, name]) => name))).toEqual(new Set(["/URI"]));
  });

  test("6.6.2.3, 6.6.4 says that it is PDF/A-2a and PDF/UA-1, and describes the words PDF/A does not know", () => {
    const one = (name: string) => Object.entries(xmp).find(([key]) => key === name)?.[1];
    expect(one("{http://www.aiim.org/pdfa/ns/id/}part")).toEqual(["2"]);
    expect(one("{http://www.aiim.org/pdfa/ns/id/}conformance")).toEqual(["A"]);
    expect(one("{http://www.aiim.org/pdfua/ns/id/}part")).toEqual(["1"]);
    expect(one("{http://www.aiim.org/pdfa/ns/schema#}namespaceURI")).toEqual(["http://www.aiim.org/pdfua/ns/id/"]);
    expect(one("{http://www.aiim.org/pdfa/ns/property#}name")).toEqual(["part"]);
  });
});

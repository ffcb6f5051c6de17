import { describe, expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { logoEngine } from "#io/shipped.js";
import type { Logo } from "#logo/logo.js";
import { openLogo } from "#logo/open-logo.js";
import type { FontBytes } from "#render/pdf/faces.js";
import { everyExample, factsOf, handoutOf, house } from "../examples/examples.js";
import { everyNode } from "../handouts/every-node.js";
import { paperDog } from "../handouts/paper-dog.js";
import { cuts, pdfOf, xmlText } from "./help.js";
import { type Element, everyElement, Objects, paintedIn, structureOf } from "./objects.js";

/**
 * The conditions of the Matterhorn Protocol 1.1 that a machine can check and that apply to what is made here, by their
 * numbers. They are read with qpdf, not with the code that wrote them.
 */
const standard = new Set(
  "Document Sect H1 H2 H3 P L LI Lbl LBody Table Caption THead TBody TFoot TR TH TD Figure Link Span".split(" "),
);
const inside: Record<string, string[]> = {
  L: ["LI", "Caption"],
  LI: ["Lbl", "LBody"],
  Table: ["TR", "THead", "TBody", "TFoot", "Caption"],
  THead: ["TR"],
  TBody: ["TR"],
  TFoot: ["TR"],
  TR: ["TH", "TD"],
};
const parents: Record<string, string[]> = {
  LI: ["L"],
  Lbl: ["LI"],
  LBody: ["LI"],
  TR: ["Table", "THead", "TBody", "TFoot"],
  TH: ["TR"],
  TD: ["TR"],
  THead: ["Table"],
  TBody: ["Table"],
  TFoot: ["Table"],
};

const drawn = await openLogo(
  {
    file: "logo.svg",
    bytes: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 4"><path d="M0 0h9v4z"/></svg>'),
  },
  { file: "clinic.yaml", line: 1, column: 1, length: 1 },
  await logoEngine(),
);
const logo = drawn.value;

/** The worked examples: one from right to left; where there is time (HEARTHSHEET_LONG=1) all, in every language. */
const examples = process.env["HEARTHSHEET_LONG"] ? everyExample : ([["dog-cheek-abscess", "ar"]] as const);

const sheets: { name: string; handout: Handout; logo?: Logo | null; families?: readonly FontBytes[] }[] = [
  { name: "a dog's sheet", handout: paperDog },
  { name: "every kind of node", handout: everyNode },
  {
    name: "a clinic's own look",
    handout: {
      ...paperDog,
      accent: { light: "#7a2e1d", dark: "#e0937f" },
      clinic: { ...paperDog.clinic, letterhead: [[{ kind: "text" as const, text: "Open since 1988" }]] },
    },
    logo,
  },
  ...examples.map(([name, language]) => ({
    name: `${name} in ${language}`,
    handout: handoutOf(factsOf(name), language),
    families: house.fonts.pdf,
  })),
];

/** Of the passages that are not in the language of the page. */
function languagesIn(handout: Handout): string[] {
  const found: string[] = [];
  JSON.stringify([handout.subtitle, handout.translationNotice, handout.clinic, handout.sections], (_, node) => {
    if (node?.kind === "passage") found.push(node.language);
    return node;
  });
  return found;
}

describe.each(sheets.flatMap((sheet) => cuts.map((cut) => ({ ...sheet, ...cut }))))(
  "$name, $paper, large $large",
  ({ handout, paper, large, logo = null, families }) => {
    const objects = new Objects(pdfOf(handout, { paper, large, logo }, families));
    const document = structureOf(objects);
    const elements = everyElement(document);
    const { catalog } = objects;
    const ofType = (type: string): Element[] => elements.filter((element) => element.type === type);
    const attribute = (element: Element, name: string) => objects.dict(element.dict["/A"])[name];
    const xmp = xmlText(objects.stream(catalog["/Metadata"]).toString("utf8"));
    const contents = objects.pages.map(({ reference, page }) => ({
      reference,
      page,
      painted: paintedIn(objects.stream(page["/Contents"]).toString("latin1")),
    }));
    const artifact = (mark: string) => mark === "Artifact";
    // H1 with MCID 4 stands as "H1:4".
    const tagged = (mark: string) => mark.includes(":");

    test("01-003, 01-004 no artifact inside tagged content, no tagged content inside an artifact", () => {
      for (const { painted } of contents)
        for (const marks of painted) expect(marks.some(artifact) && marks.some(tagged), marks.join(">")).toBe(false);
    });

    test("01-005 all painting is tagged or an artifact", () => {
      for (const { painted } of contents) {
        expect(painted.length).toBeGreaterThan(0);
        for (const marks of painted) expect(marks.filter((mark) => artifact(mark) || tagged(mark))).toHaveLength(1);
      }
    });

    test("01-007 Suspects is not true, and the document is marked", () => {
      const info = objects.dict(catalog["/MarkInfo"]);
      expect(info["/Marked"]).toBe(true);
      expect(info["/Suspects"] ?? false).toBe(false);
    });

    test("02-001, 02-003, 02-004 only standard types, none mapped", () => {
      for (const { type } of elements) expect(standard).toContain(type);
      expect(objects.dict(catalog["/StructTreeRoot"])["/RoleMap"]).toBeUndefined();
    });

    test("06-001 XMP metadata, 06-002 names PDF/UA-1, 06-003 has dc:title", () => {
      expect(objects.dict(catalog["/Metadata"])["/Subtype"]).toBe("/XML");
      expect(xmp["{http://www.aiim.org/pdfua/ns/id/}part"]).toEqual(["1"]);
      expect(xmp["{http://purl.org/dc/elements/1.1/}title"]).toHaveLength(1);
    });

    test("07-001, 07-002 DisplayDocTitle is there and true", () => {
      expect(objects.dict(catalog["/ViewerPreferences"])["/DisplayDocTitle"]).toBe(true);
    });

    test("09-004 tables and 09-005 lists hold and stand in what they may", () => {
      const walk = (element: Element): void => {
        for (const child of element.children) {
          const allowed = inside[element.type];
          if (allowed) expect(allowed, `${child.type} in ${element.type}`).toContain(child.type);
          const owners = parents[child.type];
          if (owners) expect(owners, `${child.type} in ${element.type}`).toContain(element.type);
          walk(child);
        }
        if (inside[element.type]) expect(element.content, element.type).toEqual([]);
      };
      walk(document);
      for (const table of ofType("Table")) {
        const rows = everyElement(table).filter(({ type }) => type === "TR");
        expect(new Set(rows.map(({ children }) => children.length)).size).toBe(1);
      }
    });

    test("11-001 to 11-006 the language of the page, its outline, metadata and passages", () => {
      expect(catalog["/Lang"]).toBe(`u:${handout.language}`);
      const spans = ofType("Span").filter((span) => "/Lang" in span.dict);
      const told = new Set(spans.map((span) => span.dict["/Lang"]));
      expect(told).toEqual(new Set(languagesIn(handout).map((language) => `u:${language}`)));
      if (!families) expect([...told]).toEqual(["u:es"]);
    });

    test("13-004 each figure has words for who cannot see it, and its box", () => {
      expect(ofType("Figure").length).toBeGreaterThan(0);
      for (const figure of ofType("Figure")) {
        expect(String(figure.dict["/Alt"] ?? "")).toMatch(/^u:./);
        expect(objects.list(attribute(figure, "/BBox"))).toHaveLength(4);
      }
    });

    test("14-002, 14-003 headings begin with H1 and skip no level; 14-007 no H beside them", () => {
      const levels = elements.flatMap(({ type }) => /^H(\d)$/.exec(type)?.[1] ?? []).map(Number);
      expect(levels[0]).toBe(1);
      expect(levels.filter((level) => level === 1)).toHaveLength(1);
      for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
      expect(ofType("H")).toEqual([]);
    });

    test("15-003 each TH has a scope", () => {
      expect(ofType("TH").length).toBeGreaterThan(0);
      for (const head of ofType("TH")) expect(["/Row", "/Column"]).toContain(attribute(head, "/Scope"));
    });

    test("16-001, 16-002 numbered lists say how", () => {
      for (const list of ofType("L"))
        expect(["/Disc", "/Decimal", "/None"]).toContain(attribute(list, "/ListNumbering"));
    });

    test("28-008 pages are tabbed through in the order of the structure", () => {
      for (const { page } of objects.pages) expect(page["/Tabs"]).toBe("/S");
    });

    test("28-011 each link stands in a Link, on its own page; 28-012 with words for what it is", () => {
      const annotations = objects.pages.flatMap(({ reference, page }) =>
        objects.list(page["/Annots"]).map((annotation) => ({ reference, annotation: String(annotation) })),
      );
      expect(annotations.length).toBeGreaterThan(1);
      const owners = ofType("Link").flatMap((link) => link.objects.map((object) => ({ link, object })));
      for (const { reference, annotation } of annotations) {
        const dict = objects.dict(annotation);
        expect(dict["/Subtype"]).toBe("/Link");
        expect(String(dict["/Contents"])).toMatch(/^u:./);
        expect(String(objects.dict(dict["/A"])["/URI"])).toMatch(/^u:(tel:\+|mailto:)/);
        const owner = owners.find(({ object }) => object["/Obj"] === annotation);
        expect(owner?.object["/Pg"]).toBe(reference);
        expect(owner?.link.content.map(({ page }) => page)).toEqual([reference]);
        const tree = objects.dict(objects.dict(catalog["/StructTreeRoot"])["/ParentTree"]);
        const numbers = objects.list(tree["/Nums"]);
        expect(numbers[numbers.indexOf(dict["/StructParent"] ?? null) + 1]).toBe(owner?.link.reference);
      }
    });

    test("31-009 fonts are embedded, 31-027 have a Unicode map, 31-030 draw no .notdef", () => {
      const fonts = objects.all.filter((dict) => dict["/Type"] === "/Font");
      const composite = fonts.filter((dict) => dict["/Subtype"] === "/Type0");
      expect(composite).toHaveLength(2);
      for (const font of composite) expect(objects.stream(font["/ToUnicode"]).toString()).toContain("beginbfrange");
      for (const font of fonts.filter((dict) => dict["/Subtype"] === "/CIDFontType2")) {
        expect(objects.stream(objects.dict(font["/FontDescriptor"])["/FontFile2"]).length).toBeGreaterThan(0);
        expect(font["/CIDToGIDMap"]).toBe("/Identity");
      }
      for (const { page } of contents) {
        const drawn = objects
          .stream(page["/Contents"])
          .toString("latin1")
          .matchAll(/<([0-9a-f]+)>/g);
        for (const [, hex = ""] of drawn) expect(hex.match(/.{4}/g)).not.toContain("0000");
      }
    });

    test("each piece of marked content belongs to the one element that holds it (ISO 32000-1, 14.7.4.4)", () => {
      const tree = objects.dict(objects.dict(catalog["/StructTreeRoot"])["/ParentTree"]);
      const numbers = objects.list(tree["/Nums"]);
      for (const { reference, page } of contents) {
        const owners = objects.list(numbers[numbers.indexOf(page["/StructParents"] ?? null) + 1]);
        const held = elements.flatMap((element) =>
          element.content.flatMap(({ page: on, id }) => (on === reference ? [{ id, element: element.reference }] : [])),
        );
        expect(held).toHaveLength(owners.length);
        for (const { id, element } of held) expect(owners[id]).toBe(element);
      }
    });
  },
);

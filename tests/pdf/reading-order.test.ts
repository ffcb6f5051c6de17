import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { everyNode } from "../handouts/every-node.js";
import { paperDog } from "../handouts/paper-dog.js";
import { cuts, pdfOf, tool } from "./help.js";
import { squeezed, wordsInOrder } from "./words-in-order.js";

type Node = { role?: string; type?: string; id?: string; alt?: string; lang?: string; children?: Node[] };

/** The words of a document as pdf.js finds them through its structure tree. */
async function readThroughTree(bytes: Uint8Array) {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  let words = "";
  const roles = new Set<string>();
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const byId = new Map<string, string>();
    let open = "";
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    for (const item of items) {
      if ("str" in item) byId.set(open, (byId.get(open) ?? "") + item.str);
      else if (item.type === "beginMarkedContentProps") open = item.id ?? "";
      else if (item.type === "endMarkedContent") open = "";
    }
    const walk = (node: Node): void => {
      if (node.role) roles.add(node.role);
      if (node.type === "content") words += byId.get(node.id ?? "") ?? "";
      for (const child of node.children ?? []) walk(child);
    };
    walk((await page.getStructTree()) as Node);
  }
  return { words, roles, metadata: await document.getMetadata(), marked: await document.getMarkInfo() };
}

describe.each([
  ["a dog's sheet", paperDog],
  ["every kind of node", everyNode],
])("%s", (_, handout) => {
  const expected = squeezed(wordsInOrder(handout).join(""));

  test.each(cuts)("all its words come back in order from pdf.js: $paper, large $large", async (cut) => {
    // A document that opens inside a table repeats the head as an artifact: nothing is read twice.
    expect(squeezed((await readThroughTree(pdfOf(handout, cut))).words)).toBe(expected);
  });

  test("all its words come back in order from poppler's structure", () => {
    const { out } = tool("pdfinfo", ["-struct-text", "FILE"], pdfOf(handout));
    const words = out.split("\n").flatMap((line) => /^\s*"(.*)"$/.exec(line)?.[1] ?? []);
    expect(squeezed(words.join(""))).toBe(expected);
  });

  test("says its title and language, and that it is marked", async () => {
    const { metadata, marked } = await readThroughTree(pdfOf(handout));
    const info = metadata.info as Record<string, unknown>;
    expect(info["Title"]).toBe(handout.title.replace("\r\n", " "));
    expect(info["Language"]).toBe(handout.language);
    expect(marked).toMatchObject({ Marked: true });
  });
});

test("every kind of node has its tag", async () => {
  const { roles } = await readThroughTree(pdfOf(everyNode));
  const needed = "Document Sect H1 H2 H3 P L LI Lbl LBody Table Caption THead TBody TFoot TR TH TD Figure Link Span";
  for (const role of needed.split(" ")) expect(roles).toContain(role);
});

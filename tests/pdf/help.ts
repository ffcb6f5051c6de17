import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Handout } from "#handout/handout.js";
import type { PdfOptions } from "#render/pdf/layout.js";
import { renderPdf } from "#render/pdf/pdf.js";
import type { Mark } from "#render/pdf/piece.js";
import type { Tag } from "#render/pdf/tag.js";

const folder = "node_modules/@expo-google-fonts/atkinson-hyperlegible-next";
const font = (name: string) => new Uint8Array(readFileSync(`${folder}/${name}/AtkinsonHyperlegibleNext_${name}.ttf`));

export const fonts = [{ regular: font("400Regular"), bold: font("700Bold") }];

export type Cut = Omit<PdfOptions, "fonts">;
export const cuts: Cut[] = [
  { paper: "letter", large: false },
  { paper: "letter", large: true },
  { paper: "a4", large: false },
  { paper: "a4", large: true },
];

/** families: others than those of most pages. */
export function pdfOf(
  handout: Handout,
  cut: Cut = { paper: "letter", large: false },
  families: PdfOptions["fonts"] = fonts,
): Uint8Array {
  const { value, problems } = renderPdf(handout, { ...cut, fonts: families });
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

/** The element of this type that a mark is in. */
export function tagOf(mark: Mark, type: string): Tag | null {
  for (let tag = mark.tag; tag; tag = tag.parent) if (tag.type === type) return tag;
  return null;
}

/** What an outside tool prints about a document; its standard error and exit code too. */
export function tool(command: string, args: string[], bytes: Uint8Array): { out: string; status: number | null } {
  const place = mkdtempSync(join(tmpdir(), "hearthsheet-pdf-"));
  const file = join(place, "handout.pdf");
  try {
    writeFileSync(file, bytes);
    const { stdout, stderr, status, error } = spawnSync(
      command,
      args.map((arg) => (arg === "FILE" ? file : arg)),
      { encoding: "utf8", maxBuffer: 1 << 28, cwd: place },
    );
    if (error) throw error;
    return { out: stdout + stderr, status };
  } finally {
    rmSync(place, { recursive: true });
  }
}

/**
 * An XML document through Expat: its text by element name, or only the text within one named element. Throws where the XML
 * is not well-formed and where there is no such element.
 */
export function xmlText(xml: string, within = ""): Record<string, string[]> {
  const script = `
import sys, json, xml.etree.ElementTree as tree
out = {}
document = tree.fromstring(sys.stdin.buffer.read())
for element in (document.find(".//" + sys.argv[1]) if sys.argv[1] else document).iter():
    out.setdefault(element.tag, []).append((element.text or "").strip())
json.dump(out, sys.stdout)`;
  return JSON.parse(execFileSync("python3", ["-c", script, within], { input: xml, encoding: "utf8" }));
}

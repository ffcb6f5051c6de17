import PDFDocument from "pdfkit";
import type { Handout } from "#handout/handout.js";
import type { Faces } from "./faces.js";
import { accessible, identityOf, instantOf, oneLine, xml } from "./metadata.js";

/** The members of pdfkit 0.20.2 that its types do not know. A test holds the version. */
type Hidden = {
  _id: Uint8Array;
  _root: { data: { ViewerPreferences?: { data: Record<string, string> } } };
  info: Record<string, unknown>;
  appendXML: (xml: string) => void;
  endSubset: () => void;
  endMetadata: () => void;
};
export type Kit = Document;

/**
 * A document that keeps its bytes itself. A stream that nobody listens to waits for a turn of the event loop before it lets go of
 * its document: a run of pages made without one would hold them all.
 */
class Document extends PDFDocument {
  // pdfkit writes while it is being made, before any field would be there.
  declare chunks?: Uint8Array[];
  override push(chunk: Uint8Array | null): boolean {
    this.chunks ??= [];
    if (chunk) this.chunks.push(chunk);
    return true;
  }
}

/** An empty tagged document (PDF 1.7, PDF/A-2a and PDF/UA-1) that knows its title, language, day and identity. */
export function openKit(handout: Handout, faces: Faces, paper: string, large: boolean): Kit {
  const issued = instantOf(handout.issued, handout.zone);
  const kit = new Document({
    pdfVersion: "1.7",
    subset: "PDF/A-2a" as never,
    tagged: true,
    lang: handout.language,
    displayTitle: true,
    autoFirstPage: false,
    font: null as never,
    info: {
      Title: oneLine(handout.title),
      Author: oneLine(handout.clinic.name),
      Subject: oneLine(handout.subject),
      Creator: "hearthsheet",
      Producer: "hearthsheet (pdfkit)",
      CreationDate: issued,
      ModDate: issued,
    },
  });
  for (const { name, font } of Object.values(faces).flatMap(({ founts }) => founts))
    kit.registerFont(name, font as never);
  const hidden = kit as unknown as Hidden;
  const { ViewerPreferences } = hidden._root.data;
  if (handout.direction === "rtl" && ViewerPreferences) ViewerPreferences.data["Direction"] = "R2L";
  hidden._id = identityOf(handout, paper, large);
  // pdfkit knows one subset at a time: that of an archive brings its colours, and the name of the other is added.
  const endSubset = hidden.endSubset.bind(kit);
  hidden.endSubset = () => {
    endSubset();
    hidden.appendXML(accessible);
  };
  // pdfkit writes the document's information into its XMP as it stands: "Max & <Bella>" would not be XML.
  const endMetadata = hidden.endMetadata.bind(kit);
  hidden.endMetadata = () => {
    for (const [key, value] of Object.entries(hidden.info))
      if (typeof value === "string") hidden.info[key] = xml(value);
    endMetadata();
  };
  return kit;
}

/** Ends the document and returns its bytes. */
export function bytesOf(kit: Kit): Uint8Array {
  kit.end();
  return new Uint8Array(Buffer.concat(kit.chunks ?? []));
}

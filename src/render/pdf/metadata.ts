import { createHash } from "node:crypto";
import { TZDate } from "@date-fns/tz";
import type { Handout } from "#handout/handout.js";

/** "2026-03-04T16:30" on the clinic's clock as an instant. */
export function instantOf(issued: string, zone: string): Date {
  const [year = 0, month = 1, day = 1, hour = 0, minute = 0] = (issued.match(/\d+/g) ?? []).map(Number);
  return new Date(new TZDate(year, month - 1, day, hour, minute, zone).getTime());
}

/** The document's identity: the same content has the same, other content another. */
export const identityOf = (handout: Handout, paper: string, large: boolean): Uint8Array =>
  createHash("sha256")
    .update(JSON.stringify([handout, paper, large]))
    .digest()
    .subarray(0, 16);

const entities: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/** Words without line ends and the other control characters, which XML 1.0 has no way to write. */
export const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, " ");

/** Words for an XML element. */
export const xml = (text: string): string => text.replace(/[&<>]/g, (character) => entities[character] ?? character);

/**
 * That the document is PDF/UA-1 (ISO 14289-1, 5). PDF/A does not know those words, so they come with their description
 * (ISO 19005-2, 6.6.2.3.3).
 */
export const accessible = `
        <rdf:Description xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" rdf:about="">
            <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
                <pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>
                <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
                    <pdfaProperty:name>part</pdfaProperty:name>
                    <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                    <pdfaProperty:category>internal</pdfaProperty:category>
                    <pdfaProperty:description>Indicates, which part of ISO 14289 standard is followed</pdfaProperty:description>
                </rdf:li></rdf:Seq></pdfaSchema:property>
            </rdf:li></rdf:Bag></pdfaExtension:schemas>
        </rdf:Description>
        `;

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

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Handout, Letter } from "#handout/handout.js";
import { renderEmail } from "#render/email/email.js";
import { everyNode } from "../handouts/every-node.js";
import { plainLetter } from "../handouts/letter.js";

export const calendar = [
  "BEGIN:VCALENDAR",
  "VERSION:2.0",
  "PRODID:-//example.org//test//EN",
  "METHOD:PUBLISH",
  "BEGIN:VEVENT",
  "UID:1@example.org",
  "DTSTAMP:20260302T223000Z",
  "DTSTART:20260303T153000Z",
  "SUMMARY:Bramble: visita",
  "END:VEVENT",
  "END:VCALENDAR",
  "",
].join("\r\n");
export const files = {
  pdf: Buffer.from("%PDF-1.7 \r\n\0\xff", "latin1"),
  html: Buffer.from("<p>¡Hola!</p>"),
  calendar,
};

export const handoutWith = (letter: Partial<Letter>, other: Partial<Handout> = {}): Handout => ({
  ...everyNode,
  language: "es",
  issued: "2026-03-02T16:30",
  zone: "America/Chicago",
  ...other,
  letter: { ...plainLetter, ...letter },
});

export async function messageOf(letter: Partial<Letter> = {}, other: Partial<Handout> = {}): Promise<Uint8Array> {
  const { value } = await renderEmail(handoutWith(letter, other), files);
  if (!value) throw new Error("no message");
  return value;
}

export type ReadByPython = {
  headers: string[];
  from: [string, string][];
  to: [string, string][];
  subject: string;
  date: string;
  id: string;
  defects: string[];
  parts: [string, string | null, string | null][];
  text: string;
  html: string;
};

/** Messages as Python's standard library reads them under a policy that raises on any defect. */
export function readByPython(messages: readonly Uint8Array[]): ReadByPython[] {
  const folder = mkdtempSync(join(tmpdir(), "mail-"));
  try {
    messages.forEach((bytes, i) => {
      writeFileSync(join(folder, `${String(i).padStart(5, "0")}.eml`), bytes);
    });
    const script = fileURLToPath(new URL("read.py", import.meta.url));
    const out = execFileSync("python3", [script, folder], { encoding: "utf8", maxBuffer: 1 << 28 });
    return out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

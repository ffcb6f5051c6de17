import { type Outcome, problem } from "#problems/problem.js";

/** A file as it came: its name as the user typed it, and its bytes. */
export type Source = { file: string; bytes: Uint8Array };

/** A plan is a page of text; a megabyte of it is a mistake. */
const limit = 1024 * 1024;

/** The text of a file; refuses what is too large, empty, or no UTF-8 text. */
export function textOf({ file, bytes }: Source): Outcome<string> {
  const at = { file, line: 1, column: 1, length: 1 };
  if (bytes.length > limit)
    return { value: null, problems: [problem("file-too-large", at, { bytes: bytes.length, limit })] };
  const zero = bytes.indexOf(0);
  if (zero >= 0) return { value: null, problems: [problem("file-not-text", at, { offset: zero })] };
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    if (text.trim() === "") return { value: null, problems: [problem("file-empty", at, {})] };
    return { value: text, problems: [] };
  } catch {
    return { value: null, problems: [problem("file-not-text", at, { offset: firstBadByte(bytes) })] };
  }
}

/** How many bytes decode before the first that does not. */
function firstBadByte(bytes: Uint8Array): number {
  const lossy = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
  return new TextEncoder().encode(lossy.slice(0, lossy.indexOf("\ufffd"))).length;
}

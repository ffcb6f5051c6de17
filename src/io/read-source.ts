import { type FileHandle, open } from "node:fs/promises";
import { type Outcome, type Problem, problem } from "#problems/problem.js";
import { systemCode } from "./system-error.js";

/** A file as it came: its name as the user typed it, and its bytes. */
export type Source = { file: string; bytes: Uint8Array };

/** The most that is read of one file, in bytes: a plan is a page of text. */
export const limit = 1024 * 1024;

/**
 * A file as bytes, at most a megabyte of it: a larger one is refused before it is read.
 * A pipe (`<(...)`) has no size beforehand, and is read no further than the limit. file: the name to tell problems by.
 */
export async function readSource(path: string, file = path): Promise<Outcome<Source>> {
  const refuse = (what: Problem): Outcome<Source> => ({ value: null, problems: [what] });
  const at = { file, line: 1, column: 1, length: 1 };
  let handle: FileHandle | undefined;
  try {
    handle = await open(path);
    const { size } = await handle.stat();
    if (size > limit) return refuse(problem("file-too-large", at, { bytes: size, limit }));
    const bytes = await upTo(limit + 1, handle);
    if (bytes.length > limit) return refuse(problem("file-too-large", at, { bytes: bytes.length, limit }));
    return { value: { file, bytes }, problems: [] };
  } catch (error) {
    const code = systemCode(error);
    if (code === null) throw error;
    if (code === "ENOENT" || code === "ENOTDIR") return refuse(problem("file-not-found", at, { path: file }));
    if (code === "EACCES" || code === "EPERM") return refuse(problem("file-forbidden", at, { path: file }));
    if (code === "EISDIR") return refuse(problem("file-is-folder", at, { path: file.replace(/(?<=.)[/\\]+$/, "") }));
    return refuse(problem("file-unreadable", at, { path: file, detail: code }));
  } finally {
    await handle?.close();
  }
}

/** A stream as a file: at most a megabyte of it. file: the name to tell problems by. */
export async function readStream(stream: AsyncIterable<Uint8Array>, file: string): Promise<Outcome<Source>> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    length += chunk.length;
    if (length > limit) {
      const at = { file, line: 1, column: 1, length: 1 };
      return { value: null, problems: [problem("file-too-large", at, { bytes: length, limit })] };
    }
  }
  return { value: { file, bytes: Buffer.concat(chunks) }, problems: [] };
}

async function upTo(most: number, handle: FileHandle): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for (let left = most; left > 0; ) {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(Math.min(left, 64 * 1024)), 0);
    if (bytesRead === 0) break;
    chunks.push(buffer.subarray(0, bytesRead));
    left -= bytesRead;
  }
  return Buffer.concat(chunks);
}

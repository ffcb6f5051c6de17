import { type Outcome, problem } from "#problems/problem.js";
import { limit, type Source } from "./read-source.js";

/** One line of a stream that says something: its number in the stream, from 1, and the line as a source of its own. */
export type StreamLine = { line: number; source: Outcome<Source> };

const newline = 10;

/**
 * The lines of a stream (JSON Lines), each as soon as it has come; blank ones are passed over.
 * A line longer than a file may be is refused, and no more of it is kept than that.
 */
export async function* readLines(stream: AsyncIterable<Uint8Array>, file: string): AsyncGenerator<StreamLine> {
  let line = 1;
  let kept: Uint8Array[] = [];
  let length = 0;

  const keep = (part: Uint8Array) => {
    if (length <= limit) kept.push(part);
    length += part.length;
  };
  const take = (): StreamLine | null => {
    const bytes = Buffer.concat(kept);
    const at = { file, line, column: 1, length: 1 };
    const tooLarge = length > limit ? [problem("file-too-large", at, { bytes: length, limit })] : [];
    const taken = { line, source: { value: tooLarge.length > 0 ? null : { file, bytes }, problems: tooLarge } };
    line += 1;
    kept = [];
    length = 0;
    return isBlank(bytes) ? null : taken;
  };

  for await (const chunk of stream) {
    let start = 0;
    for (let end = chunk.indexOf(newline); end >= 0; end = chunk.indexOf(newline, start)) {
      keep(chunk.subarray(start, end));
      const taken = take();
      if (taken) yield taken;
      start = end + 1;
    }
    keep(chunk.subarray(start));
  }
  const last = take();
  if (last) yield last;
}

const isBlank = (bytes: Uint8Array): boolean => bytes.every((byte) => byte === 32 || byte === 9 || byte === 13);

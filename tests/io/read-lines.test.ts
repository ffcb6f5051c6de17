import fc from "fast-check";
import { expect, it } from "vitest";
import { readLines, type StreamLine } from "../../src/io/read-lines.js";
import { limit } from "../../src/io/read-source.js";

async function linesOf(chunks: Uint8Array[]): Promise<StreamLine[]> {
  async function* stream() {
    yield* chunks;
  }
  const lines: StreamLine[] = [];
  for await (const line of readLines(stream(), "-")) lines.push(line);
  return lines;
}

it("finds the same lines however the stream is cut, with their numbers, and passes over blank ones", async () => {
  const line = fc.string({ unit: fc.constantFrom("a", "{", "ñ", " ", "\t", "\r", "🐕") });
  await fc.assert(
    fc.asyncProperty(fc.array(line), fc.boolean(), fc.array(fc.nat(7)), async (written, ended, cuts) => {
      const bytes = Buffer.from(written.join("\n") + (ended ? "\n" : ""));
      const chunks: Uint8Array[] = [];
      let at = 0;
      for (const cut of cuts) {
        chunks.push(bytes.subarray(at, at + cut));
        at += cut;
      }
      chunks.push(bytes.subarray(at));
      const found = (await linesOf(chunks)).map(({ line, source }) => [
        line,
        Buffer.from(source.value?.bytes ?? []).toString(),
      ]);
      const expected = written.map((text, i) => [i + 1, text]).filter(([, text]) => /[^ \t\r]/.test(String(text)));
      expect(found).toEqual(expected);
    }),
  );
});

it("refuses a line that is too long and goes on with the next", async () => {
  const chunk = Buffer.alloc(64 * 1024, "x");
  const lines = await linesOf([...Array(80).fill(chunk), Buffer.from("\n{}\n")]);
  expect(lines).toMatchObject([
    {
      line: 1,
      source: { problems: [{ code: "file-too-large", at: { line: 1 }, values: { bytes: 80 * 64 * 1024, limit } }] },
    },
    { line: 2, source: { value: { bytes: Buffer.from("{}") } } },
  ]);
});

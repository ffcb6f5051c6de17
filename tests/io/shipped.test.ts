import { expect, it } from "vitest";
import { shippedFiles } from "../../src/io/shipped.js";

it("finds the fonts and the languages that ship", async () => {
  const files = await shippedFiles();
  const magic = (name: string) => Buffer.from(files[name]?.subarray(0, 4) ?? []).toString("latin1");
  expect(magic("fonts/pdf-plain-regular.ttf")).toBe("\0\u0001\0\0");
  expect(magic("fonts/pdf-plain-bold.ttf")).toBe("\0\u0001\0\0");
  expect(magic("fonts/web-plain-regular.woff2")).toBe("wOF2");
  expect(magic("fonts/web-plain-bold.woff2")).toBe("wOF2");
  expect(Object.keys(files)).toEqual(
    expect.arrayContaining(["locales/en/problems/files.json", "locales/es/problems/files.json"]),
  );
});

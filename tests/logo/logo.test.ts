import { Buffer } from "node:buffer";
import { PNG } from "pngjs";
import { describe, expect, test } from "vitest";
import { logoEngine } from "#io/shipped.js";
import { openLogo } from "#logo/open-logo.js";

const at = { file: "clinic.yaml", line: 7, column: 7, length: 8 };
const engine = await logoEngine();
const open = (bytes: Uint8Array | string, file = "logo.svg") =>
  openLogo({ file, bytes: typeof bytes === "string" ? Buffer.from(bytes) : bytes }, at, engine);
const svg = (inside: string, head = "") =>
  `${head}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="200" height="50">\n${inside}\n</svg>`;
const shape = '<path id="a" fill="#123456" d="M0 0h200v50z"/>';

const png = (width: number, height: number, noisy = false): Uint8Array => {
  const image = new PNG({ width, height });
  for (let i = 0; i < image.data.length; i++)
    image.data[i] = i % 4 === 3 ? 255 : noisy ? (i * 7919 * (i >> 3)) % 251 : 40;
  return PNG.sync.write(image);
};

describe("a sound logo", () => {
  test.each([
    ["SVG", svg(shape), "logo.svg"],
    ["SVG that uses its own parts", svg(`${shape}<use href="#a" y="2"/>`), "logo.svg"],
    ["PNG", png(400, 100), "logo.png"],
  ])("%s: opaque pictures of its proportions for paper and screen", async (_, bytes, file) => {
    const { value, problems } = await open(bytes, file);
    expect(problems).toEqual([]);
    expect(value && value.width / value.height).toBeCloseTo(4, 1);
    for (const drawn of [value?.print, value?.screen]) {
      const image = PNG.sync.read(Buffer.from(drawn ?? []));
      // ISO/IEC 15948, 11.2.2: colour type 2 is RGB without alpha.
      expect(drawn?.[25]).toBe(2);
      expect(image.data.some((value, i) => i % 4 < 3 && value < 100)).toBe(true);
    }
    expect(value?.screen.length).toBeLessThanOrEqual(14 * 1024);
  });

  test("is the same bytes each time", async () => {
    expect((await open(svg(shape))).value).toEqual((await open(svg(shape))).value);
  });
});

describe("an SVG that is more than shapes is refused at its line", () => {
  test.each([
    ["a script", svg(`${shape}<script>alert(1)</script>`), "logo-not-plain"],
    ["an event", svg(`<g onload="alert(1)">${shape}</g>`), "logo-not-plain"],
    ["HTML", svg(`${shape}<foreignObject/>`), "logo-not-plain"],
    ["a link", svg(`<a href="https://example.org">${shape}</a>`), "logo-not-plain"],
    ["a picture elsewhere", svg(`${shape}<image href="https://example.org/x.png"/>`), "logo-not-plain"],
    ["parts elsewhere", svg(`${shape}<use xlink:href="other.svg#a"/>`), "logo-not-plain"],
    ["a fill elsewhere", svg('<path fill="url(https://example.org/#g)" d="M0 0h9v9z"/>'), "logo-not-plain"],
    ["a style that fetches", svg(`<style>@import "x.css";</style>${shape}`), "logo-not-plain"],
    ["letters, which need a font", svg(`${shape}<text>Clinic</text>`), "logo-has-words"],
    ["a broken end", svg(shape).slice(0, -7), "logo-broken"],
  ])("%s", async (_, bytes, code) => {
    const { value, problems } = await open(bytes);
    expect(value).toBeNull();
    expect(problems.map((problem) => [problem.code, problem.at.file])).toContainEqual([code, "logo.svg"]);
    expect(problems[0]?.at.line).toBe(2);
  });

  test("a document type, which can hold entities", async () => {
    const { problems } = await open(svg(shape, '<!DOCTYPE svg [<!ENTITY x SYSTEM "/etc/passwd">]>\n'));
    expect(problems.map(({ code }) => code)).toContain("logo-not-plain");
  });
});

test.each([
  ["a text", "not a picture", "logo-unreadable"],
  ["nothing", "", "logo-unreadable"],
  ["a blank SVG", svg(""), "logo-unreadable"],
  ["a PNG that was cut", png(400, 100).slice(0, 60), "logo-unreadable"],
  [
    "a PNG that says it is vast",
    Buffer.concat([png(4, 4).slice(0, 16), Buffer.from([0, 1, 0, 0, 0, 1, 0, 0]), png(4, 4).slice(24)]),
    "logo-unreadable",
  ],
  ["a photograph", png(720, 192, true), "logo-too-detailed"],
])("%s is told where the profile names it", async (_, bytes, code) => {
  const { value, problems } = await open(bytes);
  expect(value).toBeNull();
  expect(problems.map((problem) => [problem.code, problem.at])).toEqual([[code, at]]);
});

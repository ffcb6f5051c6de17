import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Figure } from "#handout/handout.js";
import { renderHtml } from "#render/html/html.js";
import { everyNode, hostile } from "../handouts/every-node.js";
import { randomHandout } from "../handouts/random.js";
import { fonts } from "./fonts.js";
import { complaints } from "./validator.js";

const page = renderHtml(everyNode, { fonts });

const decodeEntities = (text: string): string =>
  text.replace(/&#x([0-9a-f]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

test("html-validate finds nothing wrong with every kind of node", async () => {
  expect(await complaints(page)).toEqual([]);
});

test("html-validate finds nothing wrong with a random handout", async () => {
  await fc.assert(
    fc.asyncProperty(randomHandout(), async (handout) => {
      expect(await complaints(renderHtml(handout, { fonts }))).toEqual([]);
    }),
    { numRuns: 30 },
  );
});

test("is one file under 200 KB that names no other", () => {
  expect(Buffer.byteLength(page)).toBeLessThan(200_000);
  expect(page).not.toMatch(/(?:src|href)="(?!data:|#|tel:|mailto:)/);
  expect(page).not.toMatch(/url\((?!"data:)/);
  expect(page).not.toContain("<script");
  expect(page).not.toMatch(/ style="/);
});

test("its policy allows nothing but its own style sheet, and what the page carries", () => {
  const style = /<style>([\s\S]*)<\/style>/.exec(page)?.[1] ?? "";
  const hash = createHash("sha256").update(style).digest("base64");
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? "";
  expect(decodeEntities(policy).split("; ")).toEqual([
    "default-src 'none'",
    `style-src 'sha256-${hash}'`,
    "font-src data:",
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ]);
});

test("a link can carry nothing but its own address", () => {
  const html = renderHtml(
    {
      ...everyNode,
      subtitle: [
        { kind: "email", address: `x@example.org?bcc=${hostile}`, text: "write", from: "" },
        { kind: "phone", e164: `+1;ext=${hostile}`, text: "ring", from: "" },
      ],
      sections: [],
    },
    { fonts },
  );
  const links = [...html.matchAll(/href="((?:mailto|tel):[^"]*)"/g)].map(([, href = ""]) => decodeEntities(href));
  expect(links.map((link) => new URL(link).search)).toEqual(["", ""]);
  expect(links.map((link) => decodeURIComponent(link))).toEqual([
    `mailto:x@example.org?bcc=${hostile}`,
    `tel:+1;ext=${hostile}`,
  ]);
});

test("puts what is urgent first, whatever the order of the sections", () => {
  const html = renderHtml({ ...everyNode, sections: everyNode.sections.toReversed() }, { fonts });
  const order = [...html.matchAll(/<section id="([^"]*)"/g)].map(([, id]) => id);
  expect(order.slice(0, 3)).toEqual(["go-now", "next", "ring"]);
});

test("a drawing is turned over on a page from right to left, and what stands upright is only moved", () => {
  const figure: Figure = {
    kind: "figure",
    id: "two",
    width: 300,
    height: 20,
    shapes: [
      { path: "M0 0H10", fill: "ink" },
      { path: "M20 0H30", fill: "ink", upright: 50 },
    ],
    labels: [{ text: "أ", x: 100, y: 10, size: 12, align: "start" }],
    alt: "شكلان",
    caption: [],
  };
  const [first] = everyNode.sections;
  if (!first) throw new Error("no section");
  const drawn = (direction: "ltr" | "rtl") =>
    renderHtml({ ...everyNode, direction, sections: [{ ...first, blocks: [figure] }] }, { fonts });
  expect(drawn("rtl")).toContain('<g transform="translate(300 0) scale(-1 1)" class="fill-ink"><path d="M0 0h10" />');
  expect(drawn("rtl")).toContain('<g transform="translate(200 0)" class="fill-ink"><path d="M20 0h10" />');
  expect(drawn("rtl")).toContain('<text x="200" y="10"');
  expect(drawn("ltr")).not.toMatch(/<g[^>]* transform=/);
});

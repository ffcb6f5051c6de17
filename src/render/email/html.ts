import { toHtml } from "hast-util-to-html";
import { h } from "hastscript";
import type { Inline, Leaf, Letter, LetterPart, Section } from "#handout/handout.js";
import { leavesOf, linesOf } from "#handout/walk.js";

/** Mail programs drop style sheets: what a reader needs is on the elements. */
const page =
  "margin: 0 auto; padding: 24px 20px; max-width: 36em; font-family: -apple-system, 'Segoe UI', Roboto, Arial, sans-serif; font-size: 17px; line-height: 1.5";
const heading = "margin: 0 0 20px; font-size: 24px; line-height: 1.25";
/** Whom to ring is found at a glance and hit with a thumb; a box that is the same on both sides suits either direction. */
const list = "margin: 24px 0; padding: 8px 16px; border: 2px solid #767676; border-radius: 8px; list-style: none";
const item = "margin: 8px 0";
const phone = "display: block; padding: 6px 0; font-size: 20px; font-weight: bold; white-space: nowrap";
const rule = "margin: 32px 0; border: 0; border-top: 1px solid #767676";

/** The letter as HTML that any mail program shows: no picture, no script, nothing fetched. */
export function htmlOf({ subject, parts }: Letter): string {
  const [first] = parts;
  const tree = h("html", { lang: first?.language, dir: first?.direction }, [
    h("head", [
      h("meta", { charset: "utf-8" }),
      h("meta", { name: "viewport", content: "width=device-width" }),
      // A mail program may show it dark.
      h("meta", { name: "color-scheme", content: "light dark" }),
      h("title", subject),
    ]),
    h(
      "body",
      { style: page },
      parts.flatMap((part, i) => (i > 0 ? [h("hr", { style: rule }), partOf(part)] : [partOf(part)])),
    ),
  ]);
  return `<!doctype html>\r\n${toHtml(tree)}\r\n`;
}

const partOf = ({ language, direction, lead, sections }: LetterPart) =>
  h("div", { lang: language, dir: direction }, [
    ...(lead.length > 0 ? [h("p", lead.map(inlineOf))] : []),
    ...sections.flatMap(sectionOf),
  ]);

type Nodes = ReturnType<typeof h>[];

const sectionOf = ({ title, blocks }: Section): Nodes => [
  h("h1", { style: heading }, title.map(inlineOf)),
  ...blocks.flatMap((block) => (block.kind === "section" ? sectionOf(block) : leavesOf(block).map(leafOf))),
];

function leafOf(block: Leaf) {
  const lines = linesOf(block).map((inlines) => inlines.map(inlineOf));
  if (block.kind === "list")
    return h(
      "ul",
      { style: list },
      lines.map((line) => h("li", { style: item }, line)),
    );
  return h("p", lines.flat());
}

function inlineOf(inline: Inline): ReturnType<typeof h> | string {
  switch (inline.kind) {
    case "text":
      return inline.strong ? h("strong", inline.text) : inline.text;
    case "phone":
      return h("a", { href: `tel:${inline.e164}`, style: phone }, inline.text);
    case "email":
      return h("a", { href: `mailto:${inline.address}` }, inline.text);
    case "tick":
      return "";
    case "statement":
    case "passage":
      return h("span", inline.inlines.map(inlineOf));
    default:
      return inline.text;
  }
}

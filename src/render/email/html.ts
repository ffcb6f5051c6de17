import { toHtml } from "hast-util-to-html";
import { h } from "hastscript";
import type { Inline, Leaf, Letter, LetterPart, Section } from "#handout/handout.js";
import { leavesOf, linesOf } from "#handout/walk.js";

/** Mail programs drop style sheets: what a reader needs is on the elements. */
const page = "font-family: sans-serif; font-size: 17px; line-height: 1.5; max-width: 38em";

/** The letter as HTML that any mail program shows: no picture, no script, nothing fetched. */
export function htmlOf({ subject, parts }: Letter): string {
  const [first] = parts;
  const tree = h("html", { lang: first?.language, dir: first?.direction }, [
    h("head", [h("meta", { charset: "utf-8" }), h("title", subject)]),
    h(
      "body",
      { style: page },
      parts.flatMap((part, i) => (i > 0 ? [h("hr"), partOf(part)] : [partOf(part)])),
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
  h("h1", { style: "font-size: 22px" }, title.map(inlineOf)),
  ...blocks.flatMap((block) => (block.kind === "section" ? sectionOf(block) : leavesOf(block).map(leafOf))),
];

function leafOf(block: Leaf) {
  const lines = linesOf(block).map((inlines) => inlines.map(inlineOf));
  if (block.kind === "list")
    return h(
      "ul",
      lines.map((line) => h("li", line)),
    );
  return h("p", lines.flat());
}

function inlineOf(inline: Inline): ReturnType<typeof h> | string {
  switch (inline.kind) {
    case "text":
      return inline.strong ? h("strong", inline.text) : inline.text;
    case "phone":
      return h("a", { href: `tel:${inline.e164}`, style: "white-space: nowrap" }, inline.text);
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

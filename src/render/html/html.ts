import { toHtml } from "hast-util-to-html";
import { h } from "hastscript";
import type { Handout } from "#handout/handout.js";
import { paragraph, section } from "./blocks.js";
import { type Fonts, head } from "./head.js";
import { plain } from "./inline.js";
import type { Element, Root } from "./nodes.js";

/**
 * The handout as one HTML file that asks the network for nothing and needs no script.
 *
 * @param options.fonts the bytes of two WOFF2 files, carried inside the page
 */
export const renderHtml = (handout: Handout, { fonts }: { fonts: Fonts }): string => {
  const page: Root = {
    type: "root",
    children: [
      { type: "doctype" },
      h("html", { lang: handout.language, dir: handout.direction }, head(handout.title, fonts), body(handout)),
    ],
  };
  return `${toHtml(page)}\n`;
};

const body = (handout: Handout): Element => {
  const urgent = handout.sections.filter(({ weight }) => weight === "urgent");
  const plainer = handout.sections.filter(({ weight }) => weight === "plain");
  return h("body", {}, [
    header(handout),
    h("main", {}, urgent.map(section), contents(plainer), plainer.map(section)),
    footer(handout),
  ]);
};

const header = ({ clinic, issued, running, title, subtitle, translationNotice }: Handout): Element =>
  h(
    "header",
    {},
    h("p.letterhead", {}, h("span", {}, clinic.name), h("time", { dateTime: issued }, running.date)),
    h("h1", {}, title),
    paragraph({ role: "body", inlines: subtitle }),
    translationNotice.length > 0 ? paragraph({ role: "small", inlines: translationNotice }) : null,
  );

/** Links to what comes after the urgent part, which needs none: it is already on the screen. */
const contents = (sections: Handout["sections"]): Element | null =>
  sections.length > 1
    ? h(
        "nav",
        {},
        h(
          "ul",
          {},
          sections.map(({ id, title }) => h("li", {}, h("a", { href: `#${id}` }, plain(title)))),
        ),
      )
    : null;

const footer = ({ clinic }: Handout): Element =>
  h(
    "footer",
    {},
    h(
      "address",
      {},
      [clinic.name, ...clinic.address].map((line) => h("span", {}, line)),
    ),
  );

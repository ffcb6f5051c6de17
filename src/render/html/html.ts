import { toHtml } from "hast-util-to-html";
import { h } from "hastscript";
import type { Handout } from "#handout/handout.js";
import type { Logo } from "#logo/logo.js";
import { paragraph, section } from "./blocks.js";
import { head } from "./head.js";
import { plain } from "./inline.js";
import type { Element, Root } from "./nodes.js";
import { pageScript } from "./page-script.js";
import type { FontFamily } from "./style/fonts.js";

/**
 * fonts: families in the order they are used; those the words need are carried inside the page. calendar: the visits as
 * iCalendar text, carried too.
 */
export type HtmlOptions = {
  fonts: readonly FontFamily[];
  calendar?: string | undefined;
  logo?: Logo | null | undefined;
};

/** The handout as one HTML file that asks the network for nothing. It needs no script; what is `live` is shown by one. */
export const renderHtml = (handout: Handout, { fonts, calendar, logo = null }: HtmlOptions): string => {
  const page: Root = {
    type: "root",
    children: [
      { type: "doctype" },
      h(
        "html",
        { lang: handout.language, dir: handout.direction },
        head(handout, fonts, handout.live ? pageScript : null),
        body(handout, calendar, logo),
      ),
    ],
  };
  return `${toHtml(page, { closeEmptyElements: true })}\n`;
};

const body = (handout: Handout, calendar: string | undefined, logo: Logo | null): Element => {
  const drawn = (sections: Handout["sections"]) => sections.map((one) => section(one, handout.direction));
  const urgent = handout.sections.filter(({ weight }) => weight === "urgent");
  const plainer = handout.sections.filter(({ weight }) => weight === "plain");
  return h("body", {}, [
    header(handout, logo),
    h("main", {}, drawn(urgent), tools(handout, calendar), contents(plainer), drawn(plainer)),
    footer(handout),
    ...script(handout),
  ]);
};

const header = ({ clinic, issued, running, title, subtitle, translationNotice }: Handout, logo: Logo | null): Element =>
  h(
    "header",
    {},
    logo ? picture(logo) : null,
    h("p.letterhead", {}, h("span", {}, clinic.name), h("time", { dateTime: issued }, running.date)),
    (clinic.letterhead ?? []).map((line) => paragraph({ role: "small", inlines: line })),
    h("h1", {}, title),
    paragraph({ role: "body", inlines: subtitle }),
    translationNotice.length > 0 ? paragraph({ role: "small", inlines: translationNotice }) : null,
  );

/** The clinic's name stands beside it in words, so it says nothing to a reader who cannot see it. */
const picture = ({ screen, width, height }: Logo): Element => {
  const scale = Math.min(260 / width, 48 / height);
  const src = `data:image/png;base64,${Buffer.from(screen).toString("base64")}`;
  const [w, h_] = [Math.round(width * scale), Math.round(height * scale)];
  return h("img.logo", { src, alt: "", width: w, height: h_ });
};

/** What a reader may do with the page; a script adds what only a script can do. */
const tools = ({ live }: Handout, calendar: string | undefined): Element | null =>
  live
    ? h(
        "div#tools",
        {},
        calendar ? h("a.button", { href: dataUrl(calendar), download: "rechecks.ics" }, live.words.calendar) : null,
      )
    : null;

const dataUrl = (calendar: string): string =>
  `data:text/calendar;charset=utf-8;base64,${Buffer.from(calendar).toString("base64")}`;

/** The data as JSON that no word can end: a script element ends at "</script" and hides behind "<!--". */
const script = ({ live, zone }: Handout): Element[] =>
  live
    ? [
        h("script#live", { type: "application/json" }, JSON.stringify({ zone, ...live }).replaceAll("<", "\\u003c")),
        h("script", {}, pageScript),
      ]
    : [];

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

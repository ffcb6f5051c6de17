import { createHash } from "node:crypto";
import { h } from "hastscript";
import type { Handout } from "#handout/handout.js";
import type { Element } from "./nodes.js";
import { accentStyle } from "./style/accent.js";
import { type FontFamily, fontFaces } from "./style/fonts.js";
import { pageStyle } from "./style/page.js";
import { partsStyle } from "./style/parts.js";
import { printStyle } from "./style/print.js";

/** Head of the page: its title, its one style sheet, and a policy that allows that, the script if any, and nothing else. */
export const head = (handout: Handout, fonts: readonly FontFamily[], script: string | null): Element => {
  const { title, accent } = handout;
  const faces = fontFaces(fonts, JSON.stringify(handout));
  const style = [faces, pageStyle, partsStyle, accent ? accentStyle(accent) : "", printStyle].join("\n");
  return h("head", {}, [
    h("meta", { charSet: "utf-8" }),
    h("meta", { httpEquiv: "Content-Security-Policy", content: policy(style, script) }),
    h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    h("meta", { name: "color-scheme", content: "light dark" }),
    h("meta", { name: "referrer", content: "no-referrer" }),
    h("meta", { name: "robots", content: "noindex" }),
    // The numbers are links already; a phone must not guess at others.
    h("meta", { name: "format-detection", content: "telephone=no, date=no, email=no, address=no" }),
    h("title", {}, title),
    // An empty icon keeps a browser from asking a server for one.
    h("link", { rel: "icon", href: "data:," }),
    h("style", {}, style),
  ]);
};

const policy = (style: string, script: string | null): string =>
  [
    "default-src 'none'",
    ...(script === null ? [] : [`script-src ${hashOf(script)}`]),
    `style-src ${hashOf(style)}`,
    "font-src data:",
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

const hashOf = (text: string): string => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

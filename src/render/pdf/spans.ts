import type { From, Inline } from "#handout/handout.js";
import type { Setting } from "./setting.js";
import type { Style } from "./sheet.js";
import { type Tag, tag } from "./tag.js";
import { undrawable } from "./undrawable.js";

/** A stretch of one look and one tag. whole: never broken over lines. tabular: figures of one width. */
export type Span =
  | { kind: "text"; text: string; style: Style; tag: Tag; whole: boolean; tabular: boolean }
  | { kind: "tick"; size: number; style: Style; tag: Tag };

/** How the words of a block look. phone: the look of a number to ring. */
export type Look = { style: Style; phone: Style; tabular?: boolean };

export const strongOf = (style: Style): Style => ({ ...style, weight: "bold", colour: "ink" });
export const lookOf = (style: Style): Look => ({ style, phone: strongOf(style) });

/** The words of a line, one after the other, each with its look and tag. */
export function spansOf(inlines: Inline[], look: Look, parent: Tag, setting: Setting, from?: From): Span[] {
  const { set, sheet } = setting;
  const words = (text: string, style: Style, owner: Tag, at: From | undefined, whole = false): Span => ({
    kind: "text",
    text: set(text, style.weight, at),
    style,
    tag: owner,
    whole,
    tabular: look.tabular ?? false,
  });
  const link = (url: string, contents: string): Tag => tag("Link", parent, { link: { url, contents } });
  return inlines.flatMap((inline): Span[] => {
    switch (inline.kind) {
      case "text":
        return [words(inline.text, inline.strong ? strongOf(look.style) : look.style, parent, from)];
      case "when":
        return [words(inline.text, look.style, parent, inline.from)];
      case "dose":
        return [words(inline.text, strongOf(look.style), parent, inline.from)];
      case "money":
        return [words(inline.text, look.style, parent, inline.from, true)];
      case "phone":
        return [words(inline.text, look.phone, link(`tel:${inline.e164}`, inline.text), inline.from, true)];
      case "email":
        return [words(inline.text, look.style, link(mailto(inline.address), inline.text), inline.from, true)];
      case "statement":
        return spansOf(inline.inlines, look, parent, setting, inline.from);
      case "passage":
        return spansOf(inline.inlines, look, tag("Span", parent, { language: inline.language }), setting, from);
      case "tick":
        return [
          { kind: "tick", size: sheet.tick, style: look.style, tag: tag("Figure", parent, { alt: inline.label }) },
        ];
      default:
        return undrawable(inline, setting);
    }
  });
}

/** RFC 6068: everything but the "@" of an address is percent-encoded. */
const mailto = (address: string): string => `mailto:${encodeURIComponent(address).replaceAll("%40", "@")}`;

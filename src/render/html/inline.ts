import { h } from "hastscript";
import type { Email, Inline, Phone, When } from "#handout/handout.js";
import type { ElementContent } from "./nodes.js";

/** Words of a line as elements. Strings become text nodes, so nothing a person wrote can become markup. */
export const inlines = (line: readonly Inline[]): ElementContent[] => line.map(inline);

/** The words of a line alone, for an attribute. A tick box has none of its own. */
export const plain = (line: readonly Inline[]): string => line.map(plainOne).join("");

const plainOne = (node: Inline): string => {
  if (node.kind === "statement" || node.kind === "passage") return plain(node.inlines);
  return node.kind === "tick" ? "" : node.text;
};

const inline = (node: Inline): ElementContent => {
  switch (node.kind) {
    case "text":
      return node.strong ? h("strong", {}, node.text) : { type: "text", value: node.text };
    case "when":
      return when(node);
    case "dose":
      return h("strong", {}, node.text);
    case "money":
      return h("span", {}, node.text);
    case "phone":
      return phone(node);
    case "email":
      return email(node);
    case "statement":
      return h("span", {}, inlines(node.inlines));
    case "tick":
      return h("input", { type: "checkbox", ariaLabel: node.label, dataTick: node.id });
    case "passage":
      return h("span", { lang: node.language, dir: "auto" }, inlines(node.inlines));
  }
};

/** A span of days is not a valid `datetime`, so it stands in `data`. */
const when = ({ iso, text }: When): ElementContent =>
  iso.includes("/") ? h("data", { value: iso }, text) : h("time", { dateTime: iso }, text);

// Numbers and addresses run left to right in every script.
const phone = ({ e164, text }: Phone): ElementContent =>
  h("a.phone", { href: `tel:${encodeURIComponent(e164).replace("%2B", "+")}`, dir: "ltr" }, text);

const email = ({ address, text }: Email): ElementContent =>
  h("a.email", { href: `mailto:${encodeURIComponent(address).replace("%40", "@")}`, dir: "ltr" }, text);

import type { Inline } from "#handout/handout.js";
import { tidy, together } from "./wrap.js";

/** The words of a line, ready to be wrapped. */
export const words = (line: readonly Inline[]): string => joined(line).replace(/ +/g, " ").trim();

const joined = (line: readonly Inline[]): string => line.map(inline).join("");

const inline = (node: Inline): string => {
  switch (node.kind) {
    case "text":
    case "when":
      return tidy(node.text);
    case "dose":
    case "money":
    case "phone":
      return together(tidy(node.text));
    case "email":
      return tidy(node.text === node.address ? node.text : `${node.text} <${node.address}>`);
    case "tick":
      return together("[ ]");
    case "statement":
    case "passage":
      return joined(node.inlines);
  }
};

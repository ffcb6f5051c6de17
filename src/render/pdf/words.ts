import type { Inline } from "#handout/handout.js";

/** The words of a line without look or links. */
export function plain(inline: Inline): string {
  switch (inline.kind) {
    case "tick":
      return "";
    case "statement":
    case "passage":
      return inline.inlines.map(plain).join("");
    default:
      return inline.text;
  }
}

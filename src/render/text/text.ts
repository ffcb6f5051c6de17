import type { Handout } from "#handout/handout.js";
import { section, underlined } from "./blocks.js";
import { words } from "./inline.js";
import { inDirection } from "./isolates.js";
import { tidy, wrap } from "./wrap.js";

/** The handout as plain text for an e-mail or a screen reader: lines of at most 72 columns that end in LF. */
export const renderText = ({
  clinic,
  direction,
  running,
  title,
  subtitle,
  translationNotice,
  sections,
}: Handout): string => {
  const lines = (texts: readonly string[]) => texts.map((text) => wrap(tidy(text).trim())).join("\n");
  const urgentFirst = [
    ...sections.filter(({ weight }) => weight === "urgent"),
    ...sections.filter(({ weight }) => weight === "plain"),
  ];
  const parts = [
    lines([clinic.name, running.date, ...(clinic.letterhead ?? []).map(words)]),
    underlined(tidy(title).trim(), "="),
    wrap(words(subtitle)),
    wrap(words(translationNotice)),
    // A second blank line before a section sets it apart for the eye.
    ...urgentFirst.map((node) => `\n${section(node)}`),
    `\n${lines([clinic.name, ...clinic.address])}`,
  ];
  return `${inDirection(parts.filter((part) => part !== "").join("\n\n"), direction)}\n`;
};

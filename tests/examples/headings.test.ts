import { expect, it } from "vitest";
import type { Inline } from "#handout/handout.js";
import { blocksIn } from "#handout/walk.js";
import { compose } from "#index.js";
import { cases, factsOf, house, whole } from "./examples.js";

const bold = (inlines: readonly Inline[]) =>
  inlines.flatMap((one) => (one.kind === "text" && one.strong ? one.text : []));

it.each(cases)("a heading of %s stands by itself, and at the end of no other line", (name) => {
  const handout = whole(compose(factsOf(name), house, { language: "en" }));
  const section = handout.sections.filter(({ id }) => id === "medicines");
  const blocks = [...blocksIn({ sections: section })];
  const headings = blocks.flatMap((block) => (block.kind === "paragraph" ? bold(block.inlines) : []));
  const known = headings.filter((heading) => heading.startsWith("Good to know: "));
  expect(known).not.toEqual([]);
  for (const block of blocks)
    if (block.kind === "list")
      for (const item of block.items) for (const heading of known) expect(bold(item.inlines)).not.toContain(heading);
});

import type { Block, Handout, Inline, Leaf, Section } from "./handout.js";

/** Every section, outer before inner, in the order of the page. */
export function* sectionsIn(handout: Pick<Handout, "sections">): Generator<Section> {
  const parts = function* (sections: readonly Section[]): Generator<Section> {
    for (const section of sections) {
      yield section;
      yield* parts(section.blocks.filter((block) => block.kind === "section"));
    }
  };
  yield* parts(handout.sections);
}

/** The blocks of a block that hold no other: itself, or what stands in its columns. */
export const leavesOf = (block: Block): Leaf[] => (block.kind === "columns" ? block.columns.flat() : [block]);

/** Every block that holds no other, in the order of the page. */
export function* blocksIn(handout: Pick<Handout, "sections">): Generator<Leaf> {
  const within = function* (blocks: readonly (Block | Section)[]): Generator<Leaf> {
    for (const block of blocks)
      if (block.kind === "section") yield* within(block.blocks);
      else yield* leavesOf(block);
  };
  yield* within(handout.sections);
}

/** The lines of a block, each a list of inlines: a paragraph has one, a table one for every cell. */
export function linesOf(block: Leaf): Inline[][] {
  switch (block.kind) {
    case "paragraph":
      return [block.inlines];
    case "list":
      return block.items.flatMap(({ inlines, note }) => (note ? [inlines, note] : [inlines]));
    case "table":
      return [block.caption, ...[block.head, ...block.rows, ...block.foot].flat().map(({ inlines }) => inlines)];
    case "figure":
      return [block.caption];
    case "signature":
      return block.lines;
    case "month":
      return [];
  }
}

/** Every inline of the handout with those inside it, in the order of the page. */
export function* inlinesIn(
  handout: Pick<Handout, "sections" | "subtitle" | "translationNotice"> & Partial<Pick<Handout, "clinic">>,
): Generator<Inline> {
  for (const line of handout.clinic?.letterhead ?? []) yield* flat(line);
  yield* flat(handout.subtitle);
  yield* flat(handout.translationNotice);
  for (const { title } of sectionsIn(handout)) yield* flat(title);
  for (const block of blocksIn(handout)) for (const line of linesOf(block)) yield* flat(line);
}

/** Inlines with those inside them. */
export function* flat(inlines: readonly Inline[]): Generator<Inline> {
  for (const inline of inlines) {
    yield inline;
    if (inline.kind === "statement" || inline.kind === "passage") yield* flat(inline.inlines);
  }
}

/** The words of a line alone. A box to tick has none. */
export const wordsOf = (inlines: readonly Inline[]): string =>
  inlines
    .map((inline) => {
      if (inline.kind === "tick") return "";
      return inline.kind === "statement" || inline.kind === "passage" ? wordsOf(inline.inlines) : inline.text;
    })
    .join("");

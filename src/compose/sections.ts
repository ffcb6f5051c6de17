import type { Section } from "#handout/handout.js";
import { blocksOf } from "./block-nodes.js";
import type { Holes } from "./holes.js";
import { inlinesOf } from "./inlines.js";
import type { Content, Root, RootContent } from "./markdown.js";

/**
 * The sections of a page: `##` begins one, `###` a part of one. A line `::section{#ring .urgent}` before a heading gives
 * its id and weight; without it the id is a number. What stands before the first heading belongs to no section and is lost:
 * a template begins with a heading.
 */
export function sectionsOf({ children }: Root, holes: Holes): Section[] {
  const sections: Section[] = [];
  let named: Attributes = {};
  let open: Section | undefined;
  for (const node of children) {
    if (node.type === "leafDirective") {
      named = node.attributes ?? {};
    } else if (node.type === "heading") {
      const parent = node.depth > 2 ? sections.at(-1) : undefined;
      const siblings = parent?.blocks ?? sections;
      open = {
        kind: "section",
        id: named["id"] ?? `${parent?.id ?? "section"}-${siblings.filter(({ kind }) => kind === "section").length + 1}`,
        level: parent ? 3 : 2,
        weight: named["class"] === "urgent" ? "urgent" : "plain",
        title: inlinesOf(node.children, holes),
        blocks: [],
      };
      siblings.push(open);
      named = {};
    } else if (open && isBlock(node)) {
      open.blocks.push(...blocksOf([node], holes));
    }
  }
  return sections;
}

type Attributes = Record<string, string | null | undefined>;

/** Markdown's other kinds are not read (./markdown.ts). */
const blocks = new Set<RootContent["type"]>(["paragraph", "list", "table", "containerDirective"]);
const isBlock = (node: RootContent): node is RootContent & Content => blocks.has(node.type);

import type { Inline } from "#handout/handout.js";
import { wordsOf } from "#handout/walk.js";
import { wideStops } from "#locale/spaces.js";
import type { Holes } from "./holes.js";
import { type Phrasing, readMarkdown } from "./markdown.js";

/**
 * Markdown inside a line as inline nodes, its holes filled. Emphasis of either kind is strong: the page has one.
 * without: what is cut from the start of the line.
 */
export function inlinesOf(children: readonly Phrasing[], holes: Holes, without: RegExp | null = null): Inline[] {
  const [first, ...rest] = children;
  const begin = first?.type === "text" && without ? { ...first, value: first.value.replace(without, "") } : first;
  return joined((begin ? [begin, ...rest] : []).flatMap((child) => inlineOf(child, holes)));
}

function inlineOf(child: Phrasing, holes: Holes): Inline[] {
  if (child.type === "text") return holes.fill(child.value.replace(/[ \t]*\n[ \t]*/g, " "));
  if (child.type === "strong" || child.type === "emphasis")
    return child.children.flatMap((inner) => inlineOf(inner, holes)).map(strong);
  return [];
}

const strong = (inline: Inline): Inline => (inline.kind === "text" ? { ...inline, strong: true } : inline);

/** One stretch of text a node, its sentences in a row as their script sets them. */
function joined(inlines: Inline[]): Inline[] {
  const result: Inline[] = [];
  for (const inline of inlines) {
    const last = result.at(-1);
    if (last?.kind === "text" && inline.kind === "text" && last.strong === inline.strong)
      result[result.length - 1] = { ...last, text: last.text + inline.text };
    else result.push(inline);
  }
  return result.flatMap((inline, index): Inline[] => {
    if (inline.kind !== "text") return [inline];
    const before = index === 0 ? "" : (wordsOf(result.slice(index - 1, index)).at(-1) ?? "");
    const text = wideStops(before + inline.text).slice(before.length);
    return text === "" ? [] : [{ ...inline, text }];
  });
}

/** One line of Markdown, such as a message of a locale, as inline nodes. Most hold no markup and need no parser. */
export function lineOf(markdown: string, holes: Holes): Inline[] {
  if (!/[*_\\]/.test(markdown)) return holes.fill(markdown);
  const [first] = readMarkdown(markdown).children;
  return first?.type === "paragraph" ? inlinesOf(first.children, holes) : holes.fill(markdown);
}

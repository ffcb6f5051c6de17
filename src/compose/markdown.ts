import { directiveFromMarkdown } from "mdast-util-directive";
import { fromMarkdown } from "mdast-util-from-markdown";
import { gfmTableFromMarkdown } from "mdast-util-gfm-table";
import { cjkFriendlyExtension } from "micromark-extension-cjk-friendly";
import { directive } from "micromark-extension-directive";
import { gfmTable } from "micromark-extension-gfm-table";

/** The nodes Markdown is read into, as mdast names them. */
export type Root = ReturnType<typeof fromMarkdown>;
export type RootContent = Root["children"][number];
type Named<T extends RootContent["type"]> = Extract<RootContent, { type: T }>;
export type Paragraph = Named<"paragraph">;
export type MarkdownList = Named<"list">;
export type MarkdownTable = Named<"table">;
export type Phrasing = Paragraph["children"][number];
/** What can stand in a block: all but the whole and its headings. */
export type Content = Named<"containerDirective">["children"][number];

const { flow = {} } = directive();

/** What a handout has no use for is not read, and so prints as it was typed. */
const unread = [
  "autolink",
  "blockQuote",
  "characterReference",
  "codeFenced",
  "codeIndented",
  "codeText",
  "definition",
  "hardBreakEscape",
  "hardBreakTrailing",
  "htmlFlow",
  "htmlText",
  "labelEnd",
  "labelStartImage",
  "labelStartLink",
  "setextUnderline",
  "thematicBreak",
];

/** Chinese puts no space after **words：**, and CommonMark alone would print the asterisks. Reads Markdown: headings, paragraphs, lists, GFM tables, emphasis, and directives that stand on lines of their own. */
export const readMarkdown = (text: string): Root =>
  fromMarkdown(text, {
    extensions: [gfmTable(), cjkFriendlyExtension(), { flow }, { disable: { null: unread } }],
    mdastExtensions: [gfmTableFromMarkdown(), directiveFromMarkdown()],
  });

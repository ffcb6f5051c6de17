import type { Section } from "#handout/handout.js";
import { blockPieces } from "./blocks.js";
import { leadsOn } from "./leads-on.js";
import { rule } from "./marks.js";
import { titlePieces } from "./paragraph.js";
import { type Piece, spaced, together } from "./piece.js";
import type { Setting } from "./setting.js";
import { stacked } from "./stack.js";
import { type Tag, type TagType, tag } from "./tag.js";
import { plain } from "./words.js";

/** What cannot wait is printed first, the rest in the order of the handout. */
export const isUrgent = ({ weight }: Section): boolean => weight === "urgent";

/**
 * A section under its rule, its title in the side column beside the first words (in large print, above them). A section
 * shorter than a fifth of a page is not split: no last page holds a line or two. Nor is an urgent one that a page can hold, as
 * far as its parts with titles of their own: two go-now signs at the foot of a page would read as all there are.
 */
export function sectionPieces(section: Section, parent: Tag, setting: Setting): Piece[] {
  const { sheet } = setting;
  const { step } = sheet;
  const urgent = isUrgent(section);
  const owner = tag("Sect", parent);
  const thickness = urgent ? 3 : 0.75;
  const opening: Piece = {
    what: "rule",
    ...sheet.full,
    height: step,
    before: urgent ? 1.5 * step : 2 * step,
    keep: true,
    clear: true,
    marks: [rule(sheet.full.x, 0, sheet.full.width, thickness, "ink")],
  };
  const style = urgent ? sheet.styles.urgentTitle : sheet.styles.sectionTitle;
  const title = titlePieces(section.title, style, sheet.side, tag(sheet.apart ? "H1" : "H2", owner), setting);
  const parts = partsOf(section, owner, 2, setting);
  const drop = sheet.large ? 0 : Math.max(0, firstBaseline(parts) - firstBaseline(title));
  const heading = marked(stacked(title, drop), section, 1);
  const whole = [opening, ...(sheet.large ? [...heading, ...spaced(parts, step / 4)] : [...beside(heading), ...parts])];
  const height = (pieces: Piece[]) => pieces.reduce((sum, piece) => sum + piece.before + piece.height, 0);
  const page = sheet.bottom - sheet.top.other;
  if (height(parts) < page / 5) return together(whole);
  const most = whole.length - goingOn(section, setting);
  const [first, more] = [whole.slice(0, most), whole.slice(most)];
  return urgent && height(first) < page ? [...together(first), ...more] : whole;
}

/** How many pieces at its end a section has in parts with titles of their own. */
export function goingOn(section: Section, setting: Setting): number {
  const blocks = section.blocks.filter(({ kind }) => kind === "section");
  return partsOf({ ...section, blocks }, tag("Document", null), 2, setting).length;
}

/** Of the first line of words; 0 where a section begins with something else. */
function firstBaseline([first]: Piece[]): number {
  const words = first?.what === "line" || first?.what === "item" || first?.what === "heading";
  return (words && first.marks.find((mark) => mark.kind === "text")?.y) || 0;
}

const beside = (pieces: Piece[]): Piece[] => pieces.map((piece) => ({ ...piece, beside: true }));

const marked = (pieces: Piece[], { title }: Section, depth: number): Piece[] =>
  pieces.map((piece) => ({ ...piece, bookmark: { title: title.map(plain).join(""), depth } }));

function partsOf(section: Section, owner: Tag, depth: number, setting: Setting): Piece[] {
  const { step } = setting.sheet;
  const made = section.blocks.map((block) =>
    block.kind === "section"
      ? innerPieces(block, owner, depth + 1, setting)
      : blockPieces(block, section.weight, owner, setting),
  );
  const leads = made.map((pieces, index) => leadsOn(section.blocks, index, pieces));
  return made.flatMap((pieces, index) => {
    const kept = leads[index] ? pieces.map((piece) => ({ ...piece, keep: true })) : pieces;
    const room = section.blocks[index]?.kind === "section" ? 1.5 * step : leads[index - 1] ? step / 2 : step;
    return spaced(kept, index === 0 ? 0 : room);
  });
}

/** A part of a section: its title stands above its words. */
function innerPieces(section: Section, parent: Tag, depth: number, setting: Setting): Piece[] {
  const { styles, text, step } = setting.sheet;
  const owner = tag("Sect", parent);
  const heading = tag(`H${Math.min(depth, 6)}` as TagType, owner);
  const title = stacked(titlePieces(section.title, styles.partTitle, text, heading, setting));
  return [...marked(title, section, depth - 1), ...spaced(partsOf(section, owner, depth, setting), step / 4)];
}

import type { Block, Inline, Leaf, Section } from "#handout/handout.js";
import { blocksIn, flat, inlinesIn, leavesOf, linesOf, sectionsIn, wordsOf } from "#handout/walk.js";
import type { Trace } from "#locale/trace.js";
import { lineOf } from "./inlines.js";
import { medicineNameOn } from "./medicine-name.js";
import type { Page } from "./page.js";

/** A page whose messages can be told apart, and the sections on it. */
export type TracedPage = { page: Page; sections: readonly Section[]; trace: Trace };

/** One thing that a page tells: what it is, and the words to name it by. */
export type Told = { what: string; words: string };

/** Sections that a clinic may go without: nobody comes to harm who has not read them. */
const optional = ["done", "normal", "log", "estimate", "questions", "sign"];

/** Sections whose title says what is to be done about what stands in them: it stays under that title. */
const meant = ["go-now", "today", "tell", "home", "avoid"];

/** Sections whose dates are to be kept: when to give, and when to come. */
const dated = ["changed", "next", "medicines", "calendar", "letter"];

/** Cautions that are sentences of ours, by the start of their key. */
const cautions = [
  "changes:care",
  "handout:ring.unsure",
  "handout:go-now.lead",
  "handout:next.not-booked",
  "handout:medicines.never",
  "handout:medicines.missed",
  "handout:medicines.needed",
  "handout:medicines.step-needed",
  "handout:medicines.food",
  "handout:medicines.expires",
  "handout:medicines.opened",
  "handout:about.supports",
  "handout:about.label",
  "handout:about.in-short",
  "letter:replaces",
  "letter:ring-us",
  "labels:patient",
  "labels:keep",
];

/**
 * What an owner must be told, of all that a page tells: whom to ring, every sign and step under its title, every dose with the
 * name of its medicine, the dates of doses and visits, and the usual cautions.
 */
export const mustTell = (traced: TracedPage): Told[] => [
  ...traced.sections
    .filter(({ id }) => !optional.includes(id))
    .flatMap((section) => nodesIn(section).flatMap((node) => asked(node, section, traced.trace))),
  ...keysIn(traced).filter(({ what }) => cautions.some((start) => what.startsWith(start))),
  ...medicinesOn(traced),
];

/** All that a page tells, by what it is. */
export const toldOn = (traced: TracedPage): Set<string> =>
  new Set([
    ...traced.sections.flatMap((section) =>
      nodesIn(section).flatMap((node) => [node.what, under(node, section, traced.trace)]),
    ),
    ...[...keysIn(traced), ...medicinesOn(traced)].map(({ what }) => what),
  ]);

type Node = Told & { kind: Inline["kind"] };

function asked(node: Node, section: Section, trace: Trace): Told[] {
  const { kind, what, words } = node;
  if (kind === "when" && !dated.includes(section.id)) return [];
  const isMeant = kind === "statement" && meant.includes(section.id);
  return [{ what: isMeant ? under(node, section, trace) : what, words }];
}

/** A node with the title it stands under, by the keys of its messages. */
const under = ({ what }: Node, { title }: Section, trace: Trace): string =>
  `${what} under ${trace.keysIn(wordsOf(title)).join()}`;

const nodesIn = (section: Section): Node[] =>
  [...inlinesIn({ sections: [section], subtitle: [], translationNotice: [] })].flatMap((inline): Node[] => {
    const words = plain(wordsOf([inline]));
    const node = (what: string): Node[] => [{ kind: inline.kind, what: `${inline.kind} ${what}`, words }];
    switch (inline.kind) {
      case "phone":
        return node(inline.e164);
      case "dose":
        return node(`${inline.medicine} ${inline.amount} ${inline.unit}`);
      case "when":
        return node(inline.iso);
      case "statement":
        return node(`${inline.id} ${words}`);
      default:
        return [];
    }
  });

/** The messages that a page is made of; the nth time that one is said is something told of its own. */
function keysIn({ sections, trace }: TracedPage): Told[] {
  const tree = { sections: [...sections] };
  const lines = [...[...sectionsIn(tree)].map(({ title }) => title), ...[...blocksIn(tree)].flatMap(linesOf)].map(
    wordsOf,
  );
  const times = new Map<string, number>();
  return lines.flatMap((line) =>
    trace.keysIn(line).map((key) => {
      const nth = (times.get(key) ?? 0) + 1;
      times.set(key, nth);
      return { what: `${key} ${nth}`, words: plain(line) };
    }),
  );
}

/** The medicines whose doses all stand with their name: in the same block, or under a title that has it. */
function medicinesOn({ page, sections }: TracedPage): Told[] {
  const doses = [...sectionsIn({ sections: [...sections] })].flatMap(({ title, blocks }) =>
    blocks
      .filter(isBlock)
      .flatMap(leavesOf)
      .flatMap((leaf) => dosesIn(leaf, wordsOf(title))),
  );
  return page.view.medicines.flatMap((medicine) => {
    const words = plain(wordsOf(lineOf(medicineNameOn(page, medicine).markdown, page.holes)));
    const own = doses.filter((dose) => dose.medicine === medicine.id);
    return own.length > 0 && own.every(({ among }) => among.includes(words))
      ? [{ what: `doses of ${medicine.id}`, words }]
      : [];
  });
}

const isBlock = (block: Block | Section): block is Block => block.kind !== "section";

function dosesIn(leaf: Leaf, title: string): { medicine: string; among: string }[] {
  const lines = linesOf(leaf);
  const among = plain([title, ...lines.map(wordsOf)].join("\n"));
  return lines
    .flatMap((line) => [...flat(line)])
    .flatMap((inline) => (inline.kind === "dose" ? [{ medicine: inline.medicine, among }] : []));
}

/** Words without the marks of a trace. */
const plain = (words: string): string => words.replace(/[\u2800-\u28ff]/g, "");

import type { Section } from "#handout/handout.js";
import { newTrace } from "#locale/trace.js";
import { MissingWords } from "#locale/words.js";
import { type Problem, problem } from "#problems/problem.js";
import { mustTell, type Told, type TracedPage, toldOn } from "./kept.js";
import { readMarkdown } from "./markdown.js";
import { newPage, type Page } from "./page.js";
import { type Compiled, EndlessTemplate, FailedHelper, run, type Work } from "./run.js";
import { sectionsOf } from "./sections.js";
import type { Document, Templates } from "./templates.js";

type Root = Document | "letter" | "labels";

/**
 * The sections of a document. Where a clinic's own templates make it, it is made by ours first, and theirs is held to that: it
 * runs, it comes to an end, and it tells all that an owner must be told. Problems: "template-failed", "template-endless",
 * "override-drops", each at the template without which there is none.
 */
export function sectionsOn(page: Page, templates: Templates, document: Root): Section[] {
  const { compiled, own } = templates;
  if (own) {
    const found = faultOf(page, templates, own, document);
    if (found) page.report(found);
    if (found) return [];
  }
  return drawnOn(page, compiled, document).sections;
}

type Drawn = { sections: Section[]; work: Work };

function drawnOn(page: Page, compiled: Compiled, document: Root, most?: Work): Drawn {
  const { markdown, work } = run(compiled, page, document, most);
  return { sections: sectionsOf(readMarkdown(markdown), page.holes), work };
}

function faultOf(
  page: Page,
  { compiled }: Templates,
  own: NonNullable<Templates["own"]>,
  document: Root,
): Problem | null {
  const ours = tracedOn(page, own.ours, document);
  // A clinic may say more than we do, and never so much that it is no page.
  const most = { steps: 10 * ours.work.steps + 1000, length: 10 * ours.work.length + 100_000 };
  const must = mustTell(ours);
  const faultWith = (templates: Compiled) => faultIn(page, templates, document, must, most);
  const fault = faultWith(compiled);
  if (!fault) return null;
  const names = Object.keys(own.files);
  const without = (name: string) => faultWith({ ...compiled, ...pick(own.ours, name) });
  const culprit = names.find((name) => without(name) === null) ?? names[0] ?? "";
  return fault({ file: own.files[culprit] ?? "", line: 1, column: 1, length: 1 });
}

const pick = (compiled: Compiled, name: string): Compiled => {
  const one = compiled[name];
  return one ? { [name]: one } : {};
};

/** A page of its own, which reports nothing, and whose messages can be told apart. */
function tracedOn(page: Page, compiled: Compiled, document: Root, most?: Work): TracedPage & { work: Work } {
  const trace = newTrace();
  const { voice } = page;
  const message: typeof voice.message = (key, chosen) => trace.mark(key, voice.message(key, chosen));
  const traced = newPage(page.view, { ...voice, message }, () => {}, [...page.wanted]);
  return { page: traced, trace, ...drawnOn(traced, compiled, document, most) };
}

type Fault = (at: Problem["at"]) => Problem;

function faultIn(page: Page, compiled: Compiled, document: Root, must: readonly Told[], most: Work): Fault | null {
  try {
    const told = toldOn(tracedOn(page, compiled, document, most));
    const lost = new Set(must.filter(({ what }) => !told.has(what)).map(({ words }) => words));
    return lost.size === 0 ? null : (at) => problem("override-drops", at, { lost: listed([...lost]) });
  } catch (error) {
    if (error instanceof MissingWords) throw error;
    if (error instanceof EndlessTemplate) return (at) => problem("template-endless", at, {});
    const detail = error instanceof FailedHelper ? `{{${error.helper}}}` : error instanceof Error ? error.name : "";
    return (at) => problem("template-failed", at, { detail });
  }
}

const most = 3;

/** As many as a reader can look for at once. */
const listed = (lost: readonly string[]): string =>
  [...lost.slice(0, most), ...(lost.length > most ? ["…"] : [])].join(" · ");

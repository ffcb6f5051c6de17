import type { Facts } from "#compute/facts.js";
import type { Cell, Handout, Inline, Paragraph, Section, Spoken, Table } from "#handout/handout.js";
import { wordsOf } from "#handout/walk.js";
import { languageName } from "#locale/language-name.js";
import { isOriginal } from "#locale/source.js";
import { readByClinic, statusesOf } from "#locale/status/status.js";
import { newTrace, type Trace } from "#locale/trace.js";
import { speak, speakTraced, type Voice } from "#locale/voice.js";
import { type Outcome, problem } from "#problems/problem.js";
import { type ComposeOptions, choiceOf, compose, composeIn } from "../compose.js";
import { type Part, partsOf, type Saying } from "./sayings.js";
import { isRead, type Known, type State, stateOf } from "./state.js";

/** One line of a proof: what the owner reads, what it says in the staff's language, and the messages it is made of. */
type Row = { owner: Inline[]; staff: Inline[]; as?: Saying["as"]; state: State };

/**
 * The owner's handout beside the same in the language of the clinic's staff, line by line, each with who has read it: so that
 * staff know exactly what they send. It is a handout of its own, in the staff's language. Problems: those of both handouts;
 * "proof-same-language" where both are in one language, and then there is none.
 */
export function composeProof(facts: Facts, options: ComposeOptions): Outcome<Handout> {
  const { locales, reviews = [] } = options;
  const choice = choiceOf(facts, options);
  const trace = newTrace();
  const owners = compose(facts, options);
  const traced = composeIn(speakTraced(locales, choice.tag, facts.country, trace), choice, facts, options).value;
  const staffs = compose(facts, { ...options, language: facts.clinic.staffLanguage });
  const problems = [...owners.problems, ...staffs.problems.filter(({ severity }) => severity === "stop")];
  if (!owners.value || !staffs.value || !traced) return { value: null, problems };
  const [owner, staff] = [owners.value, staffs.value];
  if (owner.language === staff.language) {
    const at = { file: facts.care[0]?.from.file ?? "plan", line: 1, column: 1, length: 1 };
    return { value: null, problems: [...problems, problem("proof-same-language", at, { language: owner.language })] };
  }
  const known: Known = {
    original: isOriginal(owner.language, locales.tags),
    statuses: new Map(statusesOf(locales, owner.language).map((one) => [one.name, one])),
    byClinic: readByClinic(locales, owner.language, reviews),
  };
  const parts = matched(partsOf(owner), partsOf(staff), partsOf(traced), trace, known);
  const voice = speak(locales, facts.clinic.staffLanguage, facts.country);
  return { value: proofOf(owner, staff, parts, voice), problems };
}

type Matched = Part & { rows: Row[] };

/** Lines side by side. Beside the page only what has not been said before is shown: visits alike have the same words. */
function matched(owner: Part[], staff: Part[], traced: Part[], trace: Trace, known: Known): Matched[] {
  const said = new Set<string>();
  return staff.map((part, index) => {
    const beside = part.title.length === 0;
    const rows = part.sayings.flatMap(({ inlines, as }, nth): Row[] => {
      const words = owner[index]?.sayings[nth]?.inlines ?? [];
      const keys = trace.keysIn(wordsOf(traced[index]?.sayings[nth]?.inlines ?? []));
      if (words.length === 0 || keys.length === 0) return [];
      const unlike = (beside && part.id !== "top") || as === "box" ? keys.join() : wordsOf(words);
      if (said.has(unlike)) return [];
      said.add(unlike).add(keys.join()).add(wordsOf(words));
      return [{ owner: words, staff: inlines, ...(as ? { as } : {}), state: stateOf(keys.map(nameOf), known) }];
    });
    return { ...part, rows };
  });
}

/** A key without its plural and context, as sentences are named: "handout:patient.neutered_female" is "handout:patient.neutered". */
const nameOf = (key: string): string => key.replace(/_.*$/, "");

function proofOf(owner: Handout, staff: Handout, parts: Matched[], voice: Voice): Handout {
  const say = (key: string, values: Record<string, string | number> = {}) => voice.say(`proof:${key}`, values);
  const name = (tag: string) => languageName(tag, voice.region);
  const rows = parts.flatMap((part) => part.rows);
  const read = rows.filter(({ state }) => isRead(state)).length;
  const text = (words: string): Inline => ({ kind: "text", text: words });
  const strong = (words: string): Inline => ({ kind: "text", text: words, strong: true });
  const lead: Paragraph[] = [
    { kind: "paragraph", role: "lead", inlines: [text(say("clinic-only"))] },
    {
      kind: "paragraph",
      role: "body",
      inlines: [text(say("sides", { language: name(owner.language), staff: name(staff.language) }))],
    },
    { kind: "paragraph", role: "body", inlines: [text(say("read", { read, all: rows.length }))] },
  ];
  const sections = parts
    .filter(({ rows }) => rows.length > 0)
    .map((part, index) => sectionOf(part, index === 0 ? lead : []));
  const { live: _live, messages: _messages, ...page } = staff;
  return { ...page, title: say("title", { title: staff.title }), sections, events: [] };

  function sectionOf({ id, title, rows }: Matched, before: Paragraph[]): Section {
    const named = title.length > 0 ? title : [text(say(id.replace("beside-", "")))];
    return {
      kind: "section",
      id: `proof-${id}`,
      level: 2,
      weight: "plain",
      title: named,
      blocks: [...before, tableOf(wordsOf(named), rows)],
    };
  }

  function tableOf(section: string, rows: Row[]): Table {
    const spoken: Spoken = { language: owner.language, direction: owner.direction };
    const cell = (inlines: Inline[], rest: Partial<Cell> = {}): Cell => ({ inlines, align: "start", ...rest });
    return {
      kind: "table",
      caption: [text(say("table", { section }))],
      head: [
        cell([text(languageName(owner.language, owner.language))], { spoken }),
        cell([text(name(staff.language))]),
        cell([text(say("read-by"))]),
      ],
      rows: rows.map(({ owner, staff, as, state }) => [
        cell(owner, { spoken }),
        cell(as ? [text(say(as, { words: wordsOf(staff) }))] : staff),
        cell([state === "not-translated" ? strong(say(`by.${state}`)) : text(say(`by.${state}`))]),
      ]),
      foot: [],
      dense: true,
      beside: true,
    };
  }
}

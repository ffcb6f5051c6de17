import { wordsOf } from "#handout/walk.js";
import { asked, blocks, figures, lines, lists, type Material, section, sections, tables } from "./material.js";

/** yes, no, or null where the item does not apply to this material. */
export type Verdict = boolean | null;
/**
 * One item of a published checklist, in short. Computed: from the handout alone, so that a handout can fail it. Judged: by a
 * reader, with the reason and where to look.
 */
export type Item = { item: string; asks: string } & (
  | { computed: (material: Material) => Verdict }
  | { judged: true; why: string; where: string }
);

/** An owner told to do a thing is told it in its own form. "No baths" forbids as plainly as a verb. */
const verbs =
  "Ask|Before|Block|Clean|Count|Do|Each|Feed|Fill|Give|Hold|If|In a fit|Keep|Lay|Let|Look|Never|No|On the first|Put|Raise|Rinse|See|Sit|Take|Treat|Until|Use|Walk|Wash|Wear|Wet|While|Wipe|Write|After|As often|Go on|Watch|What you need|Clean";
const imperative = new RegExp(`^(${verbs})\\b`);
const few = (share: number) => share <= 0.2;
/** What an owner would have to work out: a dose by weight, a rate, a share. */
const toWorkOut =
  /\b(mg|mL|g)\s?\/\s?(kg|lb|day)\b|\bper (kg|lb|pound|kilo)\b|\d\s?%|\d\s?\/\s?\d|\btimes (the|its|his|her) weight\b/i;
const isTickTable = (table: ReturnType<typeof tables>[number]) =>
  table.rows.flat().some(({ inlines }) => inlines.some(({ kind }) => kind === "tick"));
const asksFor: [statement: string, figure: string][] = [
  ["steps.warm-compress", "warm-compress"],
  ["steps.keep-dry", "bandage-watch"],
  ["steps.count-breaths", "breaths"],
  ["collar.past-nose", "collar-fit"],
];
/** Each drawing we have stands where its step does. */
const drawn = (material: Material): boolean => {
  const said = [...material.facts.steps, ...(material.facts.collar?.statements ?? [])].map(({ id }) => id);
  const shown = figures(material).map(({ id }) => id);
  const sited = material.facts.care.some(({ site }) => site !== null);
  return (
    asksFor.every(([statement, figure]) => !said.includes(statement) || shown.includes(figure)) &&
    (!sited || shown.includes("wound-place"))
  );
};
const mainMessage = ({ handout }: Material) => {
  const first = handout.sections.find(({ id }) => id !== "changed")?.blocks[0];
  return first?.kind === "paragraph" ? first : null;
};
/** What a clinician wrote in another language stands on no English page. */
const noHardWords = (material: Material) =>
  material.reading.problems.every(
    (one) => one.code !== "word-hard" || !lines(material).some((line) => line.includes(String(givenOf(one)))),
  );
const givenOf = ({ values }: { values: object }) => ("given" in values ? values.given : "");
const active = ({ reading }: Material) =>
  few(reading.problems.filter(({ code }) => code === "sentence-passive").length / reading.sentences);
const noSums = (material: Material) => lines(material).every((line) => !toWorkOut.test(line));

/** AHRQ, PEMAT user's guide (14-0002-EF): the 17 items of understandability of printed material. */
export const understandability: Item[] = [
  {
    item: "1",
    asks: "The purpose is plain",
    computed: ({ handout, facts }) =>
      handout.title.includes(facts.patient.name) && /caring .* at home/i.test(handout.title),
  },
  {
    item: "2",
    asks: "Nothing distracts from it",
    judged: true,
    why: "Each section says whom to call, when to go, what to do, what is normal, what it costs or when we meet; there is no advertisement, no history and no science.",
    where: "the sections of the handout, read through in eight cases",
  },
  {
    item: "3",
    asks: "Everyday words",
    computed: (material) => noHardWords(material) && material.reading.scores.every(({ within }) => within),
  },
  { item: "4", asks: "A term of medicine is explained", computed: noHardWords },
  { item: "5", asks: "Active voice (in 80 of 100 sentences)", computed: active },
  {
    item: "6",
    asks: "Numbers are clear: whole ones, no percentages",
    computed: (material) => lines(material).every((line) => !/%|\d\s?\/\s?\d|\bhalf of\b/.test(line)),
  },
  { item: "7", asks: "No sums are left to the reader", computed: noSums },
  {
    item: "8",
    asks: "Short sections",
    computed: (material) =>
      blocks(material).every((block) => block.kind !== "paragraph" || wordsOf(block.inlines).split(/\s+/).length <= 75),
  },
  {
    item: "9",
    asks: "Sections have headings that say what is in them",
    computed: (material) => sections(material).every(({ title }) => wordsOf(title).trim().length > 2),
  },
  {
    item: "10",
    asks: "The order is sensible: what is urgent first",
    computed: ({ handout }) => {
      const weights = handout.sections.map(({ weight }) => weight);
      return weights.lastIndexOf("urgent") < weights.indexOf("plain") && weights[0] === "urgent";
    },
  },
  {
    item: "11",
    asks: "A summary",
    computed: (material) =>
      ["ring", "go-now"].every((id) => section(material, id)?.weight === "urgent") &&
      section(material, "questions") !== undefined,
  },
  {
    item: "12",
    asks: "Marks draw the eye to what counts",
    computed: (material) =>
      lists(material).length > 0 &&
      blocks(material).some((block) => block.kind === "paragraph" && block.role === "lead") &&
      lists(material).some(({ mark }) => mark === "tick"),
  },
  { item: "15", asks: "Drawings wherever they make it easier", computed: drawn },
  {
    item: "16",
    asks: "Drawings go with the words",
    computed: (material) =>
      figures(material).length === 0 ? null : figures(material).every(({ alt }) => alt.length > 20),
  },
  {
    item: "17",
    asks: "Drawings have captions",
    computed: (material) =>
      figures(material).length === 0
        ? null
        : figures(material).every(({ caption, labels }) => caption.length > 0 || labels.length > 0),
  },
  {
    item: "18",
    asks: "Drawings are clear",
    judged: true,
    why: "Lines on white, one thing to a picture, no background; each was looked at, for dog and cat, at the width of a phone, and those of three cases on paper.",
    where: "src/compose/figures, and tests/compose/drawings.test.ts for what a program can see",
  },
  {
    item: "19",
    asks: "Tables have short headings",
    computed: (material) =>
      tables(material).length === 0
        ? null
        : tables(material).every(({ head }) => head.every(({ inlines }) => wordsOf(inlines).split(/\s+/).length <= 5)),
  },
];

/** The 7 items of actionability of printed material. */
export const actionability: Item[] = [
  { item: "20", asks: "At least one thing to do", computed: ({ facts }) => facts.steps.length > 0 },
  {
    item: "21",
    asks: "It speaks to the reader (in 80 of 100 lines)",
    computed: (material) => {
      const all = asked(material);
      return (
        all.length > 0 &&
        few(all.filter((line) => !imperative.test(line) && !/\byou\b/i.test(line)).length / all.length)
      );
    },
  },
  {
    item: "22",
    asks: "Steps that can be managed one by one",
    computed: (material) =>
      sections(material).some(({ id }) => id.startsWith("home-")) &&
      lists(material).every(({ items }) =>
        items.every(({ inlines }) =>
          wordsOf(inlines)
            .split(/(?<=[.?!:])\s/)
            .every((one) => one.split(/\s+/).length <= 25),
        ),
      ),
  },
  {
    item: "23",
    asks: "A thing to use: a list to tick, a chart, a calendar",
    computed: (material) => tables(material).some(isTickTable),
  },
  {
    item: "24",
    asks: "How to do the sums",
    computed: (material) => (noSums(material) ? null : false),
  },
  {
    item: "25",
    asks: "How to use the charts",
    computed: (material) =>
      tables(material)
        .filter(isTickTable)
        .every((table) =>
          sections(material).some(
            ({ blocks }) =>
              blocks.some((block) => block === table) &&
              /\btick\b/i.test(
                [
                  wordsOf(table.caption),
                  ...blocks.flatMap((block) => (block.kind === "paragraph" ? wordsOf(block.inlines) : [])),
                ].join(" "),
              ),
          ),
        ),
  },
  { item: "26", asks: "Drawings wherever they help to do it", computed: drawn },
];

/** CDC Clear Communication Index: 20 items; 2 to 4 count only with 1; of 17 "no" is the good answer. */
export const index: Item[] = [
  {
    item: "1",
    asks: "One main message",
    computed: (material) =>
      wordsOf(mainMessage(material)?.inlines ?? []) === "Not sure? Call. It is always right to ask.",
  },
  {
    item: "2",
    asks: "It stands at the top",
    computed: (material) => mainMessage(material) !== null && material.handout.sections[0]?.weight === "urgent",
  },
  {
    item: "3",
    asks: "It is marked",
    computed: (material) =>
      mainMessage(material)?.inlines.every((inline) => inline.kind !== "text" || inline.strong === true) === true,
  },
  {
    item: "4",
    asks: "A picture carries it",
    judged: true,
    why: "no: page one has no picture of calling; its room is for the numbers and the signs. Scored 0.",
    where: "page one",
  },
  {
    item: "5",
    asks: "A call to action",
    computed: (material) => {
      const found = section(material, "go-now");
      return found !== undefined && /go now.*call on the way/is.test(wordsOf(lineInlines(found)));
    },
  },
  { item: "6", asks: "Message and call are active", computed: active },
  { item: "7", asks: "The words of the reader", computed: noHardWords },
  {
    item: "8",
    asks: "Lists, none of more than 7 without parts",
    computed: (material) => lists(material).length > 0 && lists(material).every(({ items }) => items.length <= 7),
  },
  {
    item: "9",
    asks: "Parts with headings",
    computed: (material) => sections(material).every(({ title }) => title.length > 0),
  },
  {
    item: "10",
    asks: "What counts most is in the first part",
    computed: (material) => material.handout.sections.slice(0, 3).every(({ weight }) => weight === "urgent"),
  },
  {
    item: "11",
    asks: "What is known and what is not",
    computed: (material) => lines(material).some((line) => /studies have not proved/i.test(line)),
  },
  { item: "12", asks: "Something to do", computed: ({ facts }) => facts.steps.length > 0 },
  {
    item: "13",
    asks: "Why it matters",
    computed: (material) =>
      asked(material).some((line) => /\b(can kill|so that|that can|may harm|can still|must)\b/i.test(line)),
  },
  {
    item: "14",
    asks: "How to do it",
    computed: (material) => sections(material).some(({ id }) => id.startsWith("home-")),
  },
  {
    item: "15",
    asks: "Numbers the reader uses",
    computed: (material) => lines(material).every((line) => !/%|\bp\s?[<=]/.test(line)),
  },
  {
    item: "16",
    asks: "What a number means",
    judged: true,
    why: "yes: each number is a time to wait, an amount to give, a day to come or a size, and its line says what to do with it.",
    where: "shared/statements: every row with values, read beside locales/en/statements.json",
  },
  { item: "17", asks: "Sums to do (the good answer is no)", computed: noSums },
  {
    item: "18",
    asks: "What the risk is",
    computed: (material) => section(material, "go-now") !== undefined && section(material, "today") !== undefined,
  },
  {
    item: "19",
    asks: "Good and bad of what is asked",
    computed: (material) => lines(material).some((line) => /can rest\. but we cannot see/i.test(line)),
  },
  {
    item: "20",
    asks: "A chance is told in words too",
    computed: (material) => (lines(material).some((line) => /\b\d+ (in|out of) \d+\b|%/.test(line)) ? false : null),
  },
];

function lineInlines(found: NonNullable<ReturnType<typeof section>>) {
  return found.blocks.flatMap((block) => (block.kind === "paragraph" ? block.inlines : []));
}

import { type Entry, modeline, newFile, type Yaml } from "#index.js";
import type { Answers } from "./answers.js";
import { collarLine } from "./collar-line.js";
import { isOrdered, leftToFill, medicineLine } from "./medicine-line.js";

/** What is said above a field, by the name of the remark; "" where nothing is. */
export type Remark = (name: string) => string;

/** What a draft is made with, besides the answers. asks: what asks for a reason, as a plan's allow writes it. */
export type Draft = { clinic: string; schema: string | null; collars: readonly string[]; asks: readonly Asked[] };
/** reason: "" while there is none. */
export type Asked = { problem: string; for: string | null; reason: string };

/** The plan in YAML, with a remark above what somebody may want to change. What was not answered is not in it. */
export function planDraft(answers: Answers, draft: Draft, remark: Remark): string {
  const { name, species, sex, weight, owner, language, email } = answers;
  return newFile([
    { comment: draft.schema === null ? undefined : modeline(draft.schema) },
    { field: "format", value: "hearthsheet/1", comment: remark("plan") },
    { field: "clinic", value: draft.clinic, comment: remark("clinic") },
    { field: "discharged", value: answers.discharged ?? "", comment: remark("discharged") },
    answers.clinician ? { field: "clinician", value: answers.clinician } : { comment: remark("clinician") },
    { field: "patient", value: filled({ name, species, sex, weight }), comment: remark("patient") },
    { field: "owner", value: filled({ name: owner, language, email }), comment: remark("owner") },
    { field: "reason", value: answers.reason ?? "", comment: remark("reason") },
    { field: "care", value: [careOf(answers)], comment: remark("care") },
    ...(answers.course?.length ? [] : [{ comment: remark("no-course") }]),
    ...medicinesOf(answers, remark),
    ...collarOf(answers, draft, remark),
    ...estimateOf(answers, remark),
    ...allowOf(draft.asks, remark),
  ]);
}

const filled = (fields: Record<string, string | undefined>): Record<string, string> =>
  Object.fromEntries(Object.entries(fields).flatMap(([field, value]) => (value ? [[field, value]] : [])));

function careOf({ topic = "", site, bandage, course = [] }: Answers): Yaml {
  return { ...filled({ topic, site, bandage }), ...(course.length > 0 ? { course } : {}) };
}

function medicinesOf({ medicines = [], discharged }: Answers, remark: Remark): Entry[] {
  const said = medicines.map((line) => medicineLine(line, discharged));
  const [whole, left] = [said.filter(isOrdered), said.filter((one) => !isOrdered(one))];
  const [head = "", ...lines] = textOf("medicines", left.map(leftToFill));
  return [
    ...(whole.length > 0
      ? [{ field: "medicines", value: whole.map(({ fields }) => fields), comment: remark("medicines") }]
      : []),
    ...(left.length > 0
      ? [{ comment: [remark("medicine-left"), ...(whole.length > 0 ? [] : [head]), ...lines].join("\n") }]
      : []),
  ];
}

function collarOf({ collar }: Answers, { collars }: Draft, remark: Remark): Entry[] {
  if (!collar) return [{ comment: remark("no-collar") }];
  return [{ field: "collar", value: collarLine(collar, collars).fields, comment: remark("collar") }];
}

function estimateOf({ items = [], paid }: Answers, remark: Remark): Entry[] {
  if (items.length === 0) return [{ comment: remark("no-estimate") }];
  return [{ field: "estimate", value: { paid: paid || "0.00", items }, comment: remark("estimate") }];
}

function allowOf(asks: readonly Asked[], remark: Remark): Entry[] {
  const rows = (some: readonly Asked[]) =>
    some.map(({ reason, ...ask }) => ({ ...filled({ problem: ask.problem, for: ask.for ?? undefined }), reason }));
  const [given, open] = [asks.filter(({ reason }) => reason !== ""), asks.filter(({ reason }) => reason === "")];
  const [head = "", ...lines] = textOf("allow", rows(open));
  return [
    ...(given.length > 0 ? [{ field: "allow", value: rows(given) }] : []),
    ...(open.length > 0
      ? [{ comment: [remark("allow"), ...(given.length > 0 ? [] : [head]), ...lines].join("\n") }]
      : []),
  ];
}

/** A field as it would be written, for a comment; what is still to be filled in ends with its colon. */
const textOf = (field: string, rows: readonly Record<string, string>[]): string[] =>
  newFile([{ field, value: rows }], { onOneLine: false })
    .trimEnd()
    .split("\n")
    .map((line) => line.replace(/: ""$/, ":"));

import type { Outcome, Problem } from "#index.js";

/** What a question is asked with: the answers before it, and what follows from them (null while nothing does). */
export type Moment<A, F> = { answers: A; facts: F | null };
/** also: words it is found by and nobody is shown. */
export type Option = { value: string; label?: string; hint?: string; also?: string };
/** What an answer says, or why it could not be read. */
export type Read<A> = A | Problem;

/**
 * One short question. fields: the answers it gives, and flags what they are called on the command line. Text is typed; one and
 * many are chosen from options. initial: the answer if nothing is typed; offered: that answer where somebody is there to see it
 * and may change it. shown: what follows from it, once it is given.
 */
export type Question<A, F> = {
  context: string;
  fields: readonly (keyof A)[];
  flags: readonly string[];
  kind: "text" | "one" | "many";
  needed: boolean;
  when?: (moment: Moment<A, F>) => boolean;
  initial?: (moment: Moment<A, F>) => readonly string[];
  offered?: (moment: Moment<A, F>) => readonly string[];
  example?: string;
  options?: (moment: Moment<A, F>) => Option[];
  read: (typed: readonly string[], moment: Moment<A, F>) => Read<A>;
  shown?: (facts: F, moment: Moment<A, F>) => Problem[];
};

/** Questions, and what follows from the answers to some of them. */
export type Interview<A, F> = { questions: readonly Question<A, F>[]; tryOut: (answers: A) => Outcome<F> };

/** Asks one question and returns what was typed or chosen; null: they have had enough. */
export type Ask<A, F> = (question: Question<A, F>, moment: Moment<A, F>) => Promise<readonly string[] | null>;

export const isProblem = <A extends object>(read: Read<A>): read is Problem => "code" in read && "severity" in read;

/** The answers, the flags that would give what is missing, and what of the flags was not understood; null: broken off. */
export type Held<A> = { answers: A; missing: string[]; faults: Problem[] } | null;

/**
 * Goes through the questions: what is given stands, the rest is asked, or taken from what is usual where there is nobody to
 * ask. told hears what follows from each answer.
 */
export async function hold<A extends object, F>(
  { questions, tryOut }: Interview<A, F>,
  given: A,
  ask: Ask<A, F> | null,
  told: (found: Problem[]) => void,
): Promise<Held<A>> {
  const asked = new Set<keyof A>(questions.flatMap(({ fields }) => fields));
  // What follows from an answer follows from those before it alone.
  let answers = pick(given, (field) => !asked.has(field));
  let facts = tryOut(answers).value;
  const missing: string[] = [];
  const faults: Problem[] = [];
  for (const question of questions) {
    const before = { answers, facts };
    const stated = pick(given, (field) => question.fields.includes(field));
    const isWhole = question.fields.every((field) => stated[field] !== undefined);
    const read = isWhole
      ? reread(question, stated, before)
      : question.when?.(before) === false
        ? stated
        : await askFor(question, before, ask);
    if (read === null) return null;
    if (isProblem(read)) faults.push(read);
    // What a flag says stands, also where its question was asked for the rest.
    else answers = { ...answers, ...read, ...(isWhole ? {} : stated) };
    if (question.needed && question.when?.(before) !== false)
      missing.push(...question.flags.filter((_, i) => answers[question.fields[i] as keyof A] === undefined));
    if (answers !== before.answers) facts = tryOut(answers).value;
    if (facts) told(question.shown?.(facts, { answers, facts }) ?? []);
  }
  return { answers, missing, faults };
}

const pick = <A extends object>(from: A, holds: (field: keyof A) => boolean): A =>
  Object.fromEntries(Object.entries(from).filter(([field]) => holds(field as keyof A))) as A;

/** Asks, or takes what is usual where there is nobody to ask. */
async function askFor<A extends object, F>(
  question: Question<A, F>,
  moment: Moment<A, F>,
  ask: Ask<A, F> | null,
): Promise<Read<A> | null> {
  const typed = ask ? await ask(question, moment) : (question.initial?.(moment) ?? []);
  if (typed === null) return null;
  return typed.length > 0 ? question.read(typed, moment) : ({} as A);
}

/** What was given by a flag is read as if it had been typed. */
function reread<A extends object, F>({ kind, fields, read }: Question<A, F>, stated: A, moment: Moment<A, F>): Read<A> {
  const [field] = fields;
  if (kind !== "text" || fields.length !== 1 || field === undefined) return stated;
  const given: unknown = stated[field];
  return read([Array.isArray(given) ? given.join("; ") : String(given)], moment);
}

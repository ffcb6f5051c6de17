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
 * and may change it. shown: what follows from it, once it is given. settledLater: doubts that a later answer may settle, told
 * at the end if none does.
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
  settledLater?: readonly Problem["code"][];
};

/** Questions, and what follows from the answers to some of them. */
export type Interview<A, F> = { questions: readonly Question<A, F>[]; tryOut: (answers: A) => Outcome<F> };

/** Instead of an answer: ask the question before this one again. */
export const back = Symbol("back");
/**
 * Asks one question and returns what was typed or chosen; null: they have had enough. said: what was typed at it before they
 * went back.
 */
export type Ask<A, F> = (
  question: Question<A, F>,
  moment: Moment<A, F>,
  said: readonly string[] | undefined,
) => Promise<readonly string[] | typeof back | null>;

export const isProblem = <A extends object>(read: Read<A>): read is Problem => "code" in read && "severity" in read;

/**
 * The answers, the flags that would give what is missing, and what of the flags was not understood; null: broken off. back: asks
 * the last question again, and goes on from there.
 */
export type Held<A> = { answers: A; missing: string[]; faults: Problem[]; back: () => Promise<Held<A>> } | null;

/** How far an interview has come: the next question, what was answered before it, and what follows from that. */
type Stand<A, F> = Moment<A, F> & { next: number; missing: readonly string[]; faults: readonly Problem[] };

/**
 * Goes through the questions: what is given stands, the rest is asked, or taken from what is usual where there is nobody to
 * ask. told hears what follows from each answer. Who goes back finds the answers as they were typed, and of those that another
 * changed answer is usual for, what is usual now.
 */
export async function hold<A extends object, F>(
  { questions, tryOut }: Interview<A, F>,
  given: A,
  ask: Ask<A, F> | null,
  told: (found: Problem[]) => void,
): Promise<Held<A>> {
  const asked = new Set<keyof A>(questions.flatMap(({ fields }) => fields));
  /** The questions asked so far, the last one last: each as it stood before. */
  const passed: Stand<A, F>[] = [];
  const said = new Map<Question<A, F>, readonly string[]>();

  const from = async (before: Stand<A, F>): Promise<Held<A>> => {
    let stand = before;
    for (let question = questions[stand.next]; question; question = questions[stand.next]) {
      const stated = pick(given, (field) => question.fields.includes(field));
      const isWhole = question.fields.every((field) => stated[field] !== undefined);
      const due = question.when?.(stand) !== false;
      let read: Read<A> = {} as A;
      if (isWhole) read = reread(question, stated, stand);
      else if (due) {
        const typed = ask ? await ask(question, stand, said.get(question)) : (question.initial?.(stand) ?? []);
        if (typed === null) return null;
        if (typed === back) {
          stand = passed.pop() ?? stand;
          continue;
        }
        if (JSON.stringify(said.get(question)) !== JSON.stringify(typed))
          for (const later of questions.slice(stand.next)) if (later.initial ?? later.offered) said.delete(later);
        said.set(question, typed);
        passed.push(stand);
        if (typed.length > 0) read = question.read(typed, stand);
      }
      // What a flag says stands, also where its question was asked for the rest.
      stand = after(stand, isWhole || isProblem(read) ? read : { ...read, ...stated });
      if (question.needed && due) stand = { ...stand, missing: [...stand.missing, ...unanswered(question, stand)] };
      stand = { ...stand, facts: tryOut(stand.answers).value };
      if (stand.facts) told(question.shown?.(stand.facts, stand) ?? []);
    }
    const { answers, missing, faults } = stand;
    return { answers, missing: [...missing], faults: [...faults], back: () => from(passed.pop() ?? stand) };
  };
  // What follows from an answer follows from those before it alone.
  const answers = pick(given, (field) => !asked.has(field));
  return from({ next: 0, answers, facts: tryOut(answers).value, missing: [], faults: [] });
}

/** How it stands after one more question. */
const after = <A extends object, F>(stand: Stand<A, F>, read: Read<A>): Stand<A, F> => ({
  ...stand,
  next: stand.next + 1,
  ...(isProblem(read) ? { faults: [...stand.faults, read] } : { answers: { ...stand.answers, ...read } }),
});

const unanswered = <A, F>({ flags, fields }: Question<A, F>, { answers }: Moment<A, F>): string[] =>
  flags.filter((_, i) => answers[fields[i] as keyof A] === undefined);

const pick = <A extends object>(from: A, holds: (field: keyof A) => boolean): A =>
  Object.fromEntries(Object.entries(from).filter(([field]) => holds(field as keyof A))) as A;

/** What was given by a flag is read as if it had been typed. */
function reread<A extends object, F>({ kind, fields, read }: Question<A, F>, stated: A, moment: Moment<A, F>): Read<A> {
  const [field] = fields;
  if (kind !== "text" || fields.length !== 1 || field === undefined) return stated;
  const given: unknown = stated[field];
  return read([Array.isArray(given) ? given.join("; ") : String(given)], moment);
}

import { autocomplete, autocompleteMultiselect, isCancel, log, select, text } from "@clack/prompts";
import wrapAnsi from "wrap-ansi";
import { explain, type Outcome, type Problem } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Desk } from "../desk.js";
import { finder } from "../finder.js";
import { printable } from "../printable.js";
import { type Ask, back, isProblem, type Moment, type Option, type Question } from "./interview.js";
import { brought } from "./trial.js";

const at = { file: "", line: 1, column: 1, length: 1 };
const output = process.stderr;
/** What the prompts draw before each line. */
const guide = "│  ";
/** More choices than this are searched by typing. */
const few = 8;

/** Whether there is somebody to ask. */
export const canAsk = (): boolean => Boolean(process.stdin.isTTY && process.stderr.isTTY);

/** Asks on the terminal, and lets no answer pass that would stop the plan. What asks for a reason passes the second time. */
export function asker<A extends object, F>(
  { house }: Desk,
  language: string,
  tryOut: (answers: A) => Outcome<F>,
): Ask<A, F> {
  const say = (found: Problem) => {
    const { what, hint } = explain(found, house, language);
    return printable(hint ? `${what} ${hint}` : what);
  };

  return async (question, moment, said) => {
    let doubted = "";
    const fault = (typed: readonly string[]): string | undefined => {
      const found = faultOf(question, moment, typed, tryOut);
      const stop = found.find(({ severity }) => severity === "stop");
      if (stop) return say(stop);
      const asks = found.filter(({ code, severity }) => severity === "ask" && !question.settledLater?.includes(code));
      const same = JSON.stringify(typed);
      if (asks.length === 0 || doubted === same) return undefined;
      doubted = same;
      return [...asks, problem("new-keep", at, {})].map(say).join(" ");
    };
    const message = say(problem("new-ask", at, { context: question.context }));
    const example = question.example && say(problem("new-example", at, { example: question.example }));
    return answerOrBack(() => askOne(question, moment, { message, example, said, fault }));
  };
}

/** Tells what follows from an answer, under it. */
export const teller =
  ({ house, terminal }: Desk, language: string) =>
  (found: readonly Problem[]): void => {
    const room = Math.min(terminal.width, 100) - guide.length;
    const lines = found.map((one) => wrapAnsi(printable(explain(one, house, language).what), room));
    if (lines.length > 0) log.info(lines.join("\n"), { output });
  };

/** Asks for a line that may stay empty, outside of any interview. said: what was typed at it before; null: they have had enough. */
export async function askLine(
  message: string,
  said: string,
  fault: (typed: string) => string | undefined,
): Promise<string | typeof back | null> {
  const saying = {
    message,
    example: undefined,
    said: [said],
    fault: ([typed = ""]: readonly string[]) => fault(typed.trim()),
  };
  const answer = await answerOrBack(() => askText("", saying));
  return answer === null || answer === back ? answer : (answer[0] ?? "").trim();
}

/** Esc goes back a question, Ctrl+C ends: the prompts tell both alike, as a cancel, so the key itself is looked at. */
async function answerOrBack(asked: () => Answer): Promise<readonly string[] | typeof back | null> {
  let key = "";
  const listen = (_: string, pressed: { name?: string }) => {
    key = pressed.name ?? "";
  };
  process.stdin.on("keypress", listen);
  const answer = await asked();
  process.stdin.off("keypress", listen);
  if (typeof answer !== "symbol") return answer;
  return key === "escape" ? back : null;
}

/** What is wrong with an answer by itself, and what it would bring to the plan. */
function faultOf<A extends object, F>(
  question: Question<A, F>,
  moment: Moment<A, F>,
  typed: readonly string[],
  tryOut: (answers: A) => Outcome<F>,
): Problem[] {
  if (typed.every((one) => one.trim() === "")) return question.needed ? [problem("new-answer-missing", at, {})] : [];
  const read = question.read(typed, moment);
  if (isProblem(read)) return [read];
  return brought(tryOut(moment.answers).problems, tryOut({ ...moment.answers, ...read }).problems);
}

type Fault = (typed: readonly string[]) => string | undefined;
type Answer = Promise<readonly string[] | symbol>;

/** said: the answer before they went back, if they did. */
type Saying = { message: string; example: string | undefined; said: readonly string[] | undefined; fault: Fault };

const finderOf = (options: readonly Option[]) =>
  finder(options, ({ value, label = "", hint = "", also = "" }) => ({ seen: `${label} ${hint} ${value}`, also }));

/**
 * One to be searched for: what is found by what is typed stands first, and the best of it is chosen. The prompt would stay at the
 * choice it was at for as long as that is found too; for each text typed there are choices of their own, so that it cannot.
 */
async function askSearched(
  options: readonly Option[],
  { chosen, ...shown }: { message: string; chosen: string | undefined; fault: Fault },
): Promise<string | symbol> {
  const find = finderOf(options);
  const listed = (typed: string) => {
    const found = find(typed);
    const rest = options.filter((option) => !found.includes(option));
    const all = [...found, ...rest].map(({ value, label = value, hint = "" }) => ({
      label,
      hint,
      value: { is: value },
    }));
    return { typed, all, found: all.slice(0, found.length) };
  };
  let now = listed("");
  const initial = now.all.find(({ value }) => value.is === chosen)?.value;
  const answer = await autocomplete({
    ...{ message: shown.message, output, maxItems: few },
    ...(initial ? { initialValue: initial } : {}),
    options() {
      if (this.userInput !== now.typed) now = listed(this.userInput);
      return now.all;
    },
    filter: (_, option) => now.found.some(({ value }) => value === option.value),
    // Searched for and not found, nothing is chosen.
    validate: (one) => shown.fault(one === undefined || Array.isArray(one) ? [] : [one.is]),
  });
  return isCancel(answer) ? answer : answer.is;
}

/** The prompts ask of each option by itself whether it is found. */
function filterOf(options: readonly Option[]): (typed: string, option: Option) => boolean {
  const find = finderOf(options);
  let last = "";
  let found = new Set<string>();
  return (typed, { value }) => {
    if (typed !== last) found = new Set(find(typed).map((one) => one.value));
    last = typed;
    return found.has(value);
  };
}

async function askOne<A, F>(question: Question<A, F>, moment: Moment<A, F>, saying: Saying): Answer {
  const { message, said, fault } = saying;
  const usual = (question.offered ?? question.initial)?.(moment) ?? [];
  if (question.kind === "text") return askText(usual[0] ?? "", saying);
  const options = question.options?.(moment) ?? [];
  const initialValues = [...(said ?? usual)];
  const chosen = options.find(({ value }) => initialValues.includes(value))?.value;
  const shown = { message, options, output, maxItems: few };
  if (question.kind === "many") {
    const validate = (typed: string | string[] | undefined) => fault([typed ?? []].flat());
    return autocompleteMultiselect({ ...shown, filter: filterOf(options), initialValues, validate });
  }
  const answer =
    options.length > few
      ? await askSearched(options, { message, chosen, fault })
      : await select({ ...shown, ...(chosen === undefined ? {} : { initialValue: chosen }) });
  return typeof answer === "symbol" ? answer : [answer];
}

/** What is usual is taken by Enter alone; what was said before stands in the line, to be mended. */
async function askText(usual: string, { message, example = "", said, fault }: Saying): Answer {
  const answer = await text({
    message,
    output,
    placeholder: usual || example,
    defaultValue: usual,
    ...(said?.[0] ? { initialValue: said[0] } : {}),
    validate: (typed) => fault([typed || usual]),
  });
  return isCancel(answer) ? answer : [answer];
}

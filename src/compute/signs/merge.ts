import { gravest, type List, type StatementRow, type Statements, urgencies } from "#tables/statements.js";
import type { Sign, Statement, Step } from "../facts.js";
import type { Saying } from "./sayings.js";

type Said = Exclude<List, "collar">;

/** One list of everything that is said, each statement once, in the order of its table. */
export const mergeList = (list: Said, sayings: readonly Saying[], statements: Statements): Statement[] =>
  statements[list].flatMap((row) => merged(list, row, sayings) ?? []);

/** The home steps, each once, with the times of day it belongs to. */
export const mergeSteps = (sayings: readonly Saying[], { steps }: Statements): Step[] =>
  steps.flatMap((row) => {
    const statement = merged("steps", row, sayings);
    return statement ? [{ ...statement, times: row.times }] : [];
  });

/** The signs, the most urgent first and within one urgency in the order of the table; the gravest that is said of one wins. */
export function mergeSigns(sayings: readonly Saying[], { signs }: Statements): Sign[] {
  const all = signs.flatMap((row): Sign[] => {
    const statement = merged("signs", row, sayings);
    const said = sayings.flatMap(({ says }) => says.signs.filter(({ id }) => id === row.id));
    const urgency = gravest([row.urgency, ...said.flatMap(({ urgency }) => urgency ?? [])]);
    return statement ? [{ ...statement, urgency }] : [];
  });
  return urgencies.flatMap((one) => all.filter(({ urgency }) => urgency === one));
}

function merged(list: Said, row: StatementRow, sayings: readonly Saying[]): Statement | null {
  const by = sayings.filter(({ says }) => idsIn(says, list).includes(row.id));
  const [first] = by;
  if (!first) return null;
  const topics = [...new Set(by.map(({ care }) => care.topic.id))];
  const about = row.about === undefined ? {} : { about: row.about };
  return { id: `${list}.${row.id}`, topics, ...about, values: row.values, from: first.from };
}

const idsIn = (says: Saying["says"], list: Said): string[] =>
  list === "signs" ? says.signs.map(({ id }) => id) : says[list];

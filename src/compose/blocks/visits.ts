import type { Visit } from "#compute/facts.js";
import type { Block, Cell, Inline, When } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { purposesOf } from "../helpers/words.js";
import { lineOf } from "../inlines.js";
import { type Page, plainOn, sayOn, type Values } from "../page.js";

/** The visits as a table, the firm ones first: when, and what for if it is sure. */
export function visitTableOn(page: Page): Block | null {
  const { visits } = page.view.course;
  if (visits.length === 0) return null;
  const say = (key: string, values?: Values) =>
    lineOf(sayOn(page, `handout:calendar.${key}`, values).markdown, page.holes);
  const head = ["when", "what"].map((key) => cell(say(`column.${key}`)));
  const rows = visits
    .toSorted((a, b) => order(a) - order(b) || a.earliest.localeCompare(b.earliest) || a.latest.localeCompare(b.latest))
    .map((visit) => [cell([whenOf(page, visit)]), cell(say(...whatOf(page, visit)))]);
  const booked = visits.filter(({ certainty }) => certainty === "booked").length;
  const caption = say(booked === 0 || booked === visits.length ? "caption-alike" : "caption");
  return { kind: "table", caption, head, rows, foot: [] };
}

const cell = (inlines: Inline[]): Cell => ({ inlines, align: "start" });

/** Booked, then what will be unless a decision spares it, then what only may be. */
const order = ({ certainty, unless }: Visit): number =>
  certainty === "booked" ? 0 : certainty === "expected" || unless ? 1 : 2;

/** "Tue, Mar 3, 9:30 AM", or "Between Fri, Mar 6 and Sat, Mar 7" */
function whenOf(page: Page, { at, earliest, latest, from }: Visit): When {
  const { voice } = page;
  const [first, last] = [voice.shortDay(earliest), voice.shortDay(latest)];
  const place = placeText(from);
  if (at) {
    const text = plainOn(page, "calendar:day-time", {
      day: voice.shortDay(at.slice(0, 10)),
      time: voice.time(at.slice(11)),
    });
    return { kind: "when", iso: at, text: voice.capital(text), from: place };
  }
  if (earliest === latest) return { kind: "when", iso: earliest, text: voice.capital(first), from: place };
  const text = plainOn(page, "calendar:between-short", { first, last });
  return { kind: "when", iso: `${earliest}/${latest}`, text: voice.capital(text), from: place };
}

/** Decisions that "unless" has words of their own for ("if still open"); any other is named. */
const unlessSaid = new Set(["closure", "bandage-removal"]);

/** "bandage change, booked"; what would spare it, or what it waits for, is said with it. */
function whatOf(page: Page, visit: Visit): [string, Values] {
  const { certainty, unless, dependsOn, purposes, where } = visit;
  const names = purposesOf(page, visit);
  const what = where ? sayOn(page, "handout:calendar.elsewhere", { purposes: names, where }) : names;
  if (certainty !== "possible") return [`row.${certainty}`, { what }];
  if (unless && unlessSaid.has(unless)) return [`row.unless.${unless}`, { what }];
  if (unless) return ["row.before", { what, event: sayOn(page, `visits:${unless}.name`) }];
  if (dependsOn && !purposes.some(({ kind }) => kind === dependsOn))
    return ["row.after", { what, event: sayOn(page, `visits:${dependsOn}.name`) }];
  return ["row.possible", { what }];
}

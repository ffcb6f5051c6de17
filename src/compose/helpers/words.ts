import type { BodySite, DayPart, FirstTrip, Statement, Told, Visit } from "#compute/facts.js";
import { Fragment } from "../holes.js";
import { lineOf } from "../inlines.js";
import { type Page, sayOn } from "../page.js";
import { toldOn } from "../told.js";
import type { Helper } from "./helper.js";

/** {{say "handout:ring.title" other=value}}: a message of the locale. */
const say: Helper = (page, [key], hash) => sayOn(page, String(key), hash);

/** {{words "topics" topic "name"}}: the message topics:<topic>.name, for a key that is a fact. */
const words: Helper = (page, [namespace, ...path], hash) => sayOn(page, `${namespace}:${path.join(".")}`, hash);

/** {{statement sign}}: a sign, step or other statement of the tables, in the words chosen for it; in: their namespace. */
const statement: Helper = (page, [given], { in: namespace = "statements" }) => {
  const { id, values } = given as Statement;
  const { markdown } = sayOn(page, `${namespace}:${id}`, values);
  return page.holes.inline({
    kind: "statement",
    id,
    inlines: lineOf(markdown, page.holes),
    from: page.origins.text(given),
  });
};

/** {{told reason}}: free text, in the owner's language if it was given in it. */
const told: Helper = (page, [given], _hash, owner) => page.holes.inline(...toldOn(page, given as Told, owner));

/** {{toldList excluded}}: several pieces of free text in a row, "the hospital, tests, and a bath". */
const toldList: Helper = (page, [given], _hash, owner) =>
  new Fragment(
    page.voice.list((given as Told[]).map((one) => page.holes.inline(...toldOn(page, one, owner)).markdown)),
  );

/** {{purposes visit}}: what a visit is for, "bandage change and recheck", "bandage change (left cheek)". */
const purposes: Helper = (page, [given]) => purposesOf(page, given as Visit);

export const purposesOf = (page: Page, visit: Visit): Fragment => {
  const { list } = page.voice;
  // A visit that is the recheck of two wounds is one recheck.
  const kinds = [...new Set(visit.purposes.map(({ kind }) => kind))];
  const names = kinds.map((kind) => {
    const what = sayOn(page, `visits:${kind}.name`);
    const wheres = visit.purposes.flatMap((one) => (one.kind === kind && one.where ? siteOn(page, one.where) : []));
    if (wheres.length === 0) return what.markdown;
    return sayOn(page, "handout:calendar.what-where", { what, where: new Fragment(list([...new Set(wheres)])) })
      .markdown;
  });
  return new Fragment(list(names));
};

const siteOn = (page: Page, { site, side }: BodySite): string =>
  sayOn(page, `sites:${site}`, { context: side }).markdown;

/** {{either trip.kinds}}: what a visit may be for, "bandage change or recheck". */
const either: Helper = (page, [given]) => eitherOf(page, given as FirstTrip["kinds"]);

export const eitherOf = (page: Page, kinds: FirstTrip["kinds"]): Fragment =>
  new Fragment(
    page.voice.list(
      kinds.map(({ kind }) => sayOn(page, `visits:${kind}.name`).markdown),
      "or",
    ),
  );

/** {{dayTimes step.times}}: "in the morning and in the evening" */
const dayTimes: Helper = (page, [given]) =>
  new Fragment(page.voice.list((given as DayPart[]).map((part) => sayOn(page, `handout:home.part.${part}`).markdown)));

/** {{weekdays row}}: "Mon to Fri" */
const weekdays: Helper = (page, [given]) => {
  const { from, to } = given as { from: number; to: number };
  const [first, last] = [page.voice.weekday(from, "short"), page.voice.weekday(to, "short")];
  return from === to
    ? new Fragment(first)
    : sayOn(page, "calendar:day-to-day", { first: new Fragment(first), last: new Fragment(last) });
};

/** {{capital (purposes visit)}}: words that begin a line. A value at their start stays as it was written. */
const capital: Helper = (page, [given]) => new Fragment(page.voice.capital(String(given)));

export const wordHelpers = { say, words, statement, told, toldList, purposes, either, weekdays, dayTimes, capital };

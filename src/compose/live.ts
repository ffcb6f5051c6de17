import type { Clock, Day, DayPart, Facts, FirstTrip, LocalTime, Visit } from "#compute/facts.js";
import type { Live, Moment, Ring } from "#handout/live.js";
import { wordsOf } from "#handout/walk.js";
import { inARow } from "#locale/spaces.js";
import { doseId } from "./blocks/chart.js";
import { doseWords } from "./dose-words.js";
import { betweenOn } from "./helpers/values.js";
import { eitherOf, purposesOf } from "./helpers/words.js";
import { lineOf } from "./inlines.js";
import type { Page } from "./page.js";
import { wordsAloneOn as plain } from "./words-alone.js";

/** Every sentence a page on a screen may choose by the clock. */
export function liveOn(page: Page): Live {
  const { ahead, caseId, contacts, discharged, medicines, revision } = page.view;
  const scheduled = medicines.filter(({ asNeededMost }) => asNeededMost === null);
  return {
    key: `hearthsheet ${caseId} ${revision}`,
    known: { from: discharged.slice(0, 10), to: ahead.knownTo },
    lastDay: ahead.lastDay,
    week: weekOn(page),
    shut: ahead.shut,
    ring: { open: ringOn(page, contacts, "open"), closed: ringOn(page, contacts, "after-hours") },
    doses: scheduled.flatMap((medicine) =>
      medicine.doses.map((dose) => ({
        id: doseId(dose),
        medicine: dose.medicine,
        at: dose.at,
        when: momentOn(page, dose.at),
        text: doseWords(page, medicine, dose),
      })),
    ),
    parts: ahead.parts.map(({ part, from }) => ({ from, title: titleOf(page, part), steps: stepsOn(page, part) })),
    visits: page.view.course.visits
      .filter(({ certainty }) => certainty !== "possible")
      .map((visit) => visitOn(page, visit))
      .concat(page.view.next.trip ? [tripOn(page, page.view.next.trip)] : []),
    words: wordsOn(page),
  };
}

const titleOf = (page: Page, part: DayPart): string => page.voice.capital(plain(page, `handout:home.part.${part}`));

function weekOn(page: Page): Live["week"] {
  const { clinic } = page.view;
  return clinic.hours.flatMap(({ from, to, hours }) =>
    hours.flatMap(({ open, close }) =>
      Array.from({ length: to - from + 1 }, (_, i) => ({
        weekday: from + i,
        open,
        close,
        now: plain(page, "screen:open.now", { time: page.voice.time(close) }),
        next: opensOn(page, from + i, open),
      })),
    ),
  );
}

function opensOn(page: Page, weekday: number, open: Clock): Moment {
  const time = page.voice.time(open);
  const day = page.voice.weekday(weekday, "long");
  return {
    today: plain(page, "screen:open.today", { time }),
    tomorrow: plain(page, "screen:open.tomorrow", { time }),
    later: plain(page, "screen:open.later", { time, day }),
  };
}

function ringOn(page: Page, contacts: Facts["contacts"], when: Facts["contacts"][number]["when"]): Ring {
  const { name, phone } = contacts.find((contact) => contact.when === when) ?? page.view.clinic;
  return { who: plain(page, "screen:ring", { who: name }), e164: phone, text: page.voice.phone(phone) };
}

function momentOn(page: Page, at: LocalTime): Moment {
  const time = page.voice.time(at.slice(11));
  return {
    today: plain(page, "screen:moment.today", { time }),
    tomorrow: plain(page, "screen:moment.tomorrow", { time }),
    later: page.voice.capital(page.voice.dateTime(at)),
  };
}

const stepsOn = (page: Page, part: DayPart): Live["parts"][number]["steps"] =>
  page.view.steps
    .filter(({ times }) => times.includes(part))
    .map(({ id, values }) => ({ id, text: plain(page, `statements:${id}`, values) }));

function visitOn(page: Page, visit: Visit): Live["visits"][number] {
  const { where } = visit;
  const purposes = page.voice.capital(wordsOf(lineOf(purposesOf(page, visit).markdown, page.holes)));
  const text = where
    ? plain(page, "handout:next.for-elsewhere", { purposes, where })
    : plain(page, "handout:next.for", { purposes });
  if (visit.at) return { until: visit.at, day: visit.at.slice(0, 10), when: momentOn(page, visit.at), text };
  return notBooked(page, visit, text);
}

function tripOn(page: Page, trip: FirstTrip): Live["visits"][number] {
  const purposes = page.voice.capital(wordsOf(lineOf(eitherOf(page, trip.kinds).markdown, page.holes)));
  return notBooked(page, trip, plain(page, "handout:next.one-of", { purposes }));
}

function notBooked(page: Page, { earliest, latest }: { earliest: Day; latest: Day }, text: string) {
  const words = page.voice.capital(betweenOn(page, earliest, latest, "").text);
  const when = { today: words, tomorrow: words, later: words };
  return { until: latest, day: null, when, text: inARow([text, plain(page, "handout:next.not-booked")]) };
}

function wordsOn(page: Page): Live["words"] {
  const { ahead } = page.view;
  return {
    title: plain(page, "screen:title"),
    closed: plain(page, "screen:closed"),
    unsure: plain(page, "screen:unsure"),
    over: plain(page, "screen:over", { day: page.voice.day(ahead.lastDay) }),
    due: plain(page, "screen:due"),
    asked: plain(page, "screen:asked"),
    missed: plain(page, "screen:missed", { section: plain(page, "handout:medicines.title") }),
    nextDose: plain(page, "screen:next-dose"),
    nextVisit: plain(page, "screen:next-visit"),
    calendar: plain(page, "screen:calendar"),
    print: plain(page, "screen:print"),
    ticks: plain(page, "screen:ticks"),
  };
}

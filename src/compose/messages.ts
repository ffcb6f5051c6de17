import type { Sign } from "#compute/facts.js";
import { inARow } from "#locale/spaces.js";
import { doseWords } from "./dose-words.js";
import { betweenOn } from "./helpers/values.js";
import type { Page } from "./page.js";
import { wordsAloneOn as plain } from "./words-alone.js";

/** A short message has room for so many signs; it says that the papers tell more. */
const mostSigns = 3;

/** The three things to know now, for a telephone that shows nothing but words: whom to ring, when to go, what comes next. */
export const messagesOn = (page: Page): string[] => [ring(page), goNow(page), next(page)].filter((text) => text !== "");

function ring(page: Page): string {
  const lines = page.view.contacts.map(({ name, phone, when }) =>
    plain(page, `messages:ring.${when}`, { who: name, phone: page.voice.phone(phone) }),
  );
  return inARow([plain(page, "messages:ring.title"), ...lines]);
}

function goNow(page: Page): string {
  const { first, rest } = page.view.goNow;
  if (first.length === 0) return "";
  const signs = first.slice(0, mostSigns).map((sign) => words(page, sign));
  const more = first.length + rest.length > mostSigns ? [plain(page, "messages:go-now.more")] : [];
  return inARow([plain(page, "messages:go-now.title"), ...signs, ...more]);
}

const words = (page: Page, { id, values }: Sign): string => plain(page, `statements:${id}`, values);

function next(page: Page): string {
  const { due, next } = page.view;
  const doses = due.map(({ dose, medicine }) => doseWords(page, medicine, dose));
  const { visit, trip } = next;
  const parts = [
    ...(next.dose
      ? [
          plain(page, "messages:next.dose", {
            when: page.voice.dateTime(next.dose.at),
            doses: page.voice.row(doses, "semicolon"),
          }),
        ]
      : []),
    ...(visit
      ? [
          plain(page, "messages:next.visit", {
            when: visit.at ? page.voice.dateTime(visit.at) : betweenOn(page, visit.earliest, visit.latest, "").text,
          }),
        ]
      : []),
    ...(trip
      ? [plain(page, "messages:next.visit", { when: betweenOn(page, trip.earliest, trip.latest, "").text })]
      : []),
  ];
  return parts.length > 0 ? inARow([plain(page, "messages:next.title"), ...parts]) : "";
}

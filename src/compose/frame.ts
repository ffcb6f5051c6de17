import type { Contact } from "#compute/facts.js";
import type { Handout, Inline } from "#handout/handout.js";
import type { Choice } from "#locale/choose.js";
import { isolated } from "#locale/isolate.js";
import { languageName } from "#locale/language-name.js";
import type { Say } from "#locale/words.js";
import { type Page, plainOn } from "./page.js";
import type { Document } from "./templates.js";
import { toldOn } from "./told.js";

/** All of a handout but its sections, events and letter: titles, the running head, the notice about its translation. */
export function frameOf(
  page: Page,
  choice: Choice,
  english: Say,
  document: Document,
  unreviewed: boolean,
): Omit<Handout, "sections" | "events" | "letter"> {
  const { view, voice } = page;
  const apart = (words: string) => isolated(words, voice.direction);
  return {
    language: voice.language,
    direction: voice.direction,
    title: plainOn(page, document === "estimate" ? "handout:estimate.alone.title" : "handout:title"),
    subtitle: [text(subtitle(page))],
    running: {
      patient: apart(view.patient.name),
      date: voice.wholeDay(view.discharged.slice(0, 10)),
      clinic: whomToRing(page),
    },
    pageWords: pageWords(page),
    issued: view.discharged,
    zone: view.zone,
    subject: plainOn(page, "handout:subject", { clinic: view.clinic.name }),
    clinic: {
      name: apart(view.clinic.name),
      address: view.clinic.address.map(apart),
      email: view.clinic.email,
      letterhead: view.clinic.letterhead.map((line) => toldOn(page, line.text, line)),
    },
    accent: view.clinic.accent,
    translationNotice: translationNotice(page, choice, english, unreviewed),
    calendarName: plainOn(page, "calendar:name"),
  };
}

const text = (words: string): Inline => ({ kind: "text", text: words });

/** The numbers to ring, on every page: the reader who needs one may hold any of them. */
function whomToRing(page: Page): string {
  const { view, voice } = page;
  const numberOf = (hours: Contact["when"]): string =>
    voice.phone(view.contacts.find(({ when }) => when === hours)?.phone ?? view.clinic.phone);
  const values = { open: numberOf("open"), closed: numberOf("after-hours"), clinic: view.clinic.name };
  return plainOn(page, "handout:running", values);
}

/** "Dog, spayed female, 6 years and 9 months, 24.6 kg" */
function subtitle(page: Page): string {
  const { patient } = page.view;
  const { years = 0, months = 0 } = patient.age ?? {};
  const age = [
    ...(years > 0 ? [page.voice.amount({ value: String(years), unit: "year" })] : []),
    ...(months > 0 ? [page.voice.amount({ value: String(months), unit: "month" })] : []),
  ];
  const parts = [
    plainOn(page, `handout:patient.${patient.species}`),
    plainOn(page, patient.neutered ? "handout:patient.neutered" : "handout:patient.entire"),
    ...(age.length > 0 ? [page.voice.list(age)] : []),
    page.voice.amount(patient.weight),
  ];
  return parts.join(" · ");
}

/** "Page 2 of 5" in its three pieces. */
function pageWords(page: Page): Handout["pageWords"] {
  const [before = "", rest = ""] = page.voice.message("handout:page").split("{{page}}");
  const [middle = "", after = ""] = rest.split("{{pages}}");
  return { before, between: middle, after, digits: page.voice.digits };
}

/**
 * Where the page is not in the language its owner reads best, that is said in the words of the page. Where nobody qualified
 * has read the translation, that is said in its language and in English. What was first written so needs no notice.
 */
function translationNotice({ voice }: Page, choice: Choice, english: Say, unreviewed: boolean): Inline[] {
  const name = (tag: string) => languageName(tag, voice.region);
  const standsIn = choice.why !== "asked" && choice.why !== "nearest";
  const notReady = { language: name(choice.asked), shown: name(voice.language) };
  const lead = standsIn ? [text(voice.say("language:not-ready", notReady))] : [];
  if (!unreviewed) return lead;
  const own = voice.say("language:unreviewed", { language: languageName(voice.language, voice.region) });
  const foreign = english("language:unreviewed", { language: languageName(voice.language, "en") });
  return [
    ...lead,
    text(`${standsIn ? " " : ""}${own} `),
    { kind: "passage", language: "en", inlines: [text(isolated(foreign, voice.direction))] },
  ];
}

import { readdirSync } from "node:fs";
import { afterEach, describe, expect, it, vi } from "vitest";
import { compose } from "#compose/compose.js";
import { openTemplates } from "#compose/templates.js";
import type { Facts, Visit } from "#compute/facts.js";
import { faultsOf } from "#handout/check.js";
import type { Handout } from "#handout/handout.js";
import { printTree } from "#handout/print-tree.js";
import { blocksIn, inlinesIn, linesOf, wordsOf } from "#handout/walk.js";
import { openLocales } from "#locale/locales.js";
import { cat, dog } from "./fixture.js";
import { composed, filesIn, locales, templates } from "./shipped.js";

afterEach(() => vi.unstubAllEnvs());

const made = (facts: Facts, language: string): Handout => composed(facts, language).value ?? expect.fail();
const section = (handout: Handout, id: string) => handout.sections.find((one) => one.id === id) ?? expect.fail(id);
const wordsIn = (handout: Handout, id: string) =>
  [...blocksIn({ sections: [section(handout, id)] })].flatMap(linesOf).map(wordsOf);

describe.each([
  ["dog", "en", dog],
  ["dog", "es", dog],
  ["cat", "en", cat],
  ["cat", "es", cat],
] as const)("the %s in %s", (name, language, facts) => {
  const { value, problems } = composed(facts, language);
  const handout = value ?? expect.fail(JSON.stringify(problems));

  it("is the accepted tree", async () => {
    await expect(printTree(handout)).toMatchFileSnapshot(`accepted/${name}-${language}.snapshot.txt`);
  });

  it("has every section, most urgent first, and no faults", () => {
    expect(handout.sections.map(({ id }) => id)).toEqual([
      "ring",
      "next",
      "go-now",
      "done",
      "today",
      "tell",
      "normal",
      "home",
      "avoid",
      "collar",
      "medicines",
      "log",
      "calendar",
      "estimate",
      "questions",
      "sign",
      "about",
    ]);
    expect(faultsOf(handout)).toEqual([]);
    expect(problems).toEqual([]);
  });

  it("tells every sign, step, dose, visit and amount of the facts", () => {
    const inlines = [...inlinesIn(handout)];
    const told = (kind: string) => inlines.filter((inline) => inline.kind === kind);
    const ids = new Set(told("statement").map((inline) => (inline.kind === "statement" ? inline.id : "")));
    for (const { id } of [...facts.signs, ...facts.steps, ...facts.normal, ...facts.avoid, ...facts.ends])
      expect(ids).toContain(id);
    const isos = new Set(told("when").map((inline) => (inline.kind === "when" ? inline.iso : "")));
    for (const { at, earliest, latest } of facts.course.visits)
      expect(isos).toContain(at ?? (earliest === latest ? earliest : `${earliest}/${latest}`));
    const minors = new Set(told("money").map((inline) => (inline.kind === "money" ? inline.minor : 0)));
    for (const { total } of facts.estimate?.lines ?? [])
      for (const minor of [total.low, total.high]) expect(minors).toContain(minor);
    const chart = [...blocksIn({ sections: [section(handout, "medicines")] })].find((block) => block.kind === "table");
    const ticked = chart
      ? linesOf(chart)
          .flat()
          .filter(({ kind }) => kind === "dose")
      : [];
    expect(ticked).toHaveLength(facts.medicines.flatMap(({ doses }) => doses).length);
  });

  it("every value says where it came from", () => {
    for (const inline of inlinesIn(handout))
      if ("from" in inline) expect(inline.from).toMatch(/^(plan|clinic)\.yaml:\d+:\d+$/);
  });

  it("asks nothing that yes or no would answer", () => {
    const open = {
      en: /^(When|What|Whom|How|Why|It is the middle)/,
      es: /^¿(Cuándo|Qué|A quién|Cómo|Por qué)|^Es de madrugada/,
    };
    const list = [...blocksIn({ sections: [section(handout, "questions")] })].find((block) => block.kind === "list");
    const items = list?.kind === "list" ? list.items : [];
    expect(items).toHaveLength(7);
    for (const { inlines } of items) expect(wordsOf(inlines)).toMatch(open[language]);
  });
});

it("the first list of signs to go for holds no more than seven", () => {
  const lists = section(made(dog, "en"), "go-now").blocks.filter((block) => block.kind === "list");
  expect(lists.map((list) => (list.kind === "list" ? list.items.length : 0))).toEqual([7]);
});

it.each(["Pacific/Kiritimati", "Pacific/Niue", "Europe/London"])("the host's zone (%s) changes nothing", (zone) => {
  const here = printTree(made(dog, "es"));
  vi.stubEnv("TZ", zone);
  expect(printTree(made(dog, "es"))).toBe(here);
});

describe("languages", () => {
  it("what nobody wrote in the owner's language stands in the staff's, marked, and the clinician is told", () => {
    const { value, problems } = composed({ ...dog, reason: { en: "A cut." } }, "es");
    expect(problems).toMatchObject([{ code: "reason-not-translated", severity: "note", values: { language: "es" } }]);
    expect(section(value ?? expect.fail(), "done").blocks[0]).toMatchObject({
      inlines: [{ kind: "passage", language: "en", inlines: [{ kind: "text", text: "A cut." }] }],
    });
  });

  it("a regional tag uses its language's words and its own formats", () => {
    const handout = made(dog, "es-ES");
    expect(handout.language).toBe("es");
    expect(wordsIn(handout, "next")[0]).toBe("Próxima medicina: martes, 3\u00a0de\u00a0marzo, 8:00");
  });

  it("a language nobody put into words is answered in English, and page and problems say so", () => {
    const { value, problems } = composed(dog, "so");
    expect(problems).toMatchObject([
      { code: "language-not-ready", severity: "note", values: { asked: "so", used: "en" } },
    ]);
    expect(value?.language).toBe("en");
    expect(wordsOf(value?.translationNotice ?? [])).toContain("Somali");
  });

  it("what stands in for it says so in its own words: another the owner reads, or the language of the staff", () => {
    const other = compose(dog, { language: ["so", "es-MX"], templates, locales }).value ?? expect.fail();
    const staffs = composed({ ...dog, clinic: { ...dog.clinic, staffLanguage: "es" } }, "so").value ?? expect.fail();
    for (const { language, translationNotice } of [other, staffs]) {
      expect(language).toBe("es");
      expect(wordsOf(translationNotice)).toMatch(
        /^Todavía no tenemos estas hojas en somalí\. Están en español\..* español/,
      );
    }
    const near = composed(dog, "en-AU");
    expect(near.value?.language).toBe("en-GB");
    expect(near.problems).toEqual([]);
  });

  it("the clinician's own words are printed in whichever language the owner reads", () => {
    const facts = { ...dog, reason: { en: "A cut.", so: "Dhaawac." } };
    const { value } = compose(facts, { language: ["so", "es"], templates, locales });
    expect(section(value ?? expect.fail(), "done").blocks[0]).toMatchObject({
      inlines: [{ kind: "passage", language: "so", inlines: [{ kind: "text", text: "Dhaawac." }] }],
    });
  });

  it("British words are told to owners of a British clinic, and the rest is said as English says it", () => {
    const { value } = composed({ ...dog, country: "GB" }, "en");
    expect(value?.language).toBe("en-GB");
    expect(wordsOf(value?.subtitle ?? [])).toMatch(/^Dog · neutered female/);
    expect(value?.running.date).toBe("2\u00a0March 2026");
    expect(value?.translationNotice).toEqual([]);
  });

  it("an unreviewed translation says so in both languages; the original says nothing", () => {
    const notice = made(dog, "es").translationNotice;
    expect(notice).toMatchObject([{ kind: "text" }, { kind: "passage", language: "en" }]);
    expect(wordsOf(notice)).toMatch(/español.*Spanish/);
    expect(made(dog, "en").translationNotice).toEqual([]);
  });

  it("words follow the animal's sex", () => {
    const male = { ...cat, patient: { ...cat.patient, sex: "male" as const } };
    expect(wordsOf(made(cat, "es").subtitle)).toMatch(/^Gata · esterilizada/);
    expect(wordsOf(made(male, "es").subtitle)).toMatch(/^Gato · castrado/);
  });

  it("missing words stop the page and are named, every one of them", () => {
    const files = filesIn("locales");
    const visits = JSON.parse(files["locales/es/visits.json"] ?? "{}");
    delete visits["bandage-change"];
    delete visits["closure"].name;
    const gap = openLocales({ ...files, "locales/es/visits.json": JSON.stringify(visits) }).value ?? expect.fail();
    const templates = openTemplates(filesIn("templates"), gap).value ?? expect.fail();
    const { value, problems } = compose(dog, { language: "es", templates, locales: gap });
    expect(value).toBeNull();
    expect(problems.map(({ values }) => "key" in values && values.key).sort()).toEqual([
      "visits:bandage-change.name",
      "visits:bandage-change.what",
      "visits:bandage-change.why",
      "visits:closure.name",
    ]);
  });
});

describe("the calendar", () => {
  const events = made(dog, "en").events;
  const booked = (at: string): Facts => {
    const [first] = dog.course.visits;
    const visit: Visit = { ...(first ?? expect.fail()), at, earliest: at.slice(0, 10), latest: at.slice(0, 10) };
    return { ...dog, course: { ...dog.course, visits: [visit] } };
  };

  it("booked visits are timed and certain, the others whole days and tentative", () => {
    expect(events.map(({ status, allDay }) => `${status} ${allDay}`)).toEqual([
      ...Array(3).fill("confirmed false"),
      ...Array(4).fill("tentative true"),
    ]);
    expect(events[0]).toMatchObject({ start: "2026-03-03T09:30", end: "2026-03-03T09:50" });
    expect(events[3]).toMatchObject({ start: "2026-03-06", end: "2026-03-09" });
  });

  it("an alarm rings at six the evening before, also on the night the clocks change", () => {
    // 2026-03-08 in Chicago has 23 hours (IANA tzdata; US rule since 2007: second Sunday in March).
    const [usual] = made(booked("2026-03-03T09:30"), "en").events;
    const [changed] = made(booked("2026-03-08T09:30"), "en").events;
    expect(usual?.alarms.map(({ minutesBefore }) => minutesBefore)).toEqual([15 * 60 + 30, 60]);
    expect(changed?.alarms.map(({ minutesBefore }) => minutesBefore)).toEqual([14 * 60 + 30, 60]);
  });

  it("what a stranger may read over a shoulder tells no diagnosis", () => {
    for (const language of ["en", "es"])
      for (const { summary, description, alarms } of made(dog, language).events)
        expect([summary, description, ...alarms.map(({ text }) => text)].join(" ")).not.toMatch(
          /abs[ceo]+s|wound|herida|bandage|vendaje|clos|cierre/i,
        );
  });

  it("an event keeps its name over revisions and languages, whatever the case is called", () => {
    const uids = (facts: Facts, language: string) => made(facts, language).events.map(({ uid }) => uid);
    expect(uids({ ...dog, revision: 3 }, "es")).toEqual(uids(dog, "en"));
    expect(uids({ ...dog, caseId: "a b\r\nX:1@c" }, "en")[0]).toBe("a%20b%0D%0AX%3A1%40c-change-1@hearthsheet.invalid");
  });
});

it("the month begins on the locale's first day and marks each day once by its firmest visit", () => {
  const month = [...blocksIn(made(dog, "en"))].find((block) => block.kind === "month") ?? expect.fail();
  if (month.kind !== "month") return;
  expect(month.weekdays[0]?.long).toBe("Sunday");
  const marked = Object.fromEntries(month.weeks.flat().map(({ iso, marks }) => [iso, marks.map(({ mark }) => mark)]));
  expect(marked).toMatchObject({
    "2026-03-02": ["discharge"],
    "2026-03-05": ["booked"],
    "2026-03-09": ["expected"],
    "2026-03-08": ["closed"],
    "2026-03-16": ["possible"],
    "2026-03-17": [],
  });
});

it("a case with the least in it is still a page", () => {
  const bare: Facts = {
    ...cat,
    clinician: null,
    patient: { ...cat.patient, age: null },
    next: { dose: null, alsoDue: [], visit: null, trip: null },
    signs: [],
    normal: [],
    steps: [],
    avoid: [],
    supplies: [],
    ends: [],
    log: { days: [], rows: [] },
    medicines: [],
    chart: null,
    collar: null,
    estimate: null,
    course: { visits: [], trips: { fewest: 0, likely: 0, most: 0 }, purposes: [], ends: null, first: null, closed: [] },
  };
  const { value, problems } = composed(bare, "en");
  expect(problems).toEqual([]);
  expect(value?.sections.map(({ id }) => id)).toEqual(["ring", "done", "questions", "sign", "about"]);
  expect(faultsOf(value ?? expect.fail())).toEqual([]);
});

it("says nothing of a language's words that the files do not hold", () =>
  expect(locales.tags).toEqual(readdirSync("locales").sort()));

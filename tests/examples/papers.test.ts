import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { wordsOf } from "#handout/walk.js";
import { compose, type Facts, render } from "#index.js";
import { tool } from "../pdf/help.js";
import { cases, everyExample, factsOf, handoutOf, house, whole } from "./examples.js";

ICAL.design.strict = true;
// NAME is RFC 7986's, 5.1, which ical.js 2 does not know: it is TEXT.
ICAL.design.icalendar.property["name"] = { defaultType: "text" };

const lettersOf = (words: string): string => [...words.replace(/[^\p{L}]/gu, "")].sort().join("");
const bare = (words: string): string => words.replace(/\s/g, "");
const cuts = (["letter", "a4"] as const).flatMap((paper) => [false, true].map((large) => ({ paper, large })));

/** The files that are handed over, read by programs that are not ours. */
describe.each(everyExample)("%s in %s", (name, language) => {
  const handout = handoutOf(factsOf(name), language);
  const file = async (format: "pdf" | "ics", cut: (typeof cuts)[number] = { paper: "letter", large: false }) =>
    whole(await render(handout, house, { ...cut, formats: [format] }))[0]?.bytes ?? new Uint8Array();

  test.each(cuts)("the PDF is sound to qpdf: $paper, large $large", async (cut) => {
    expect(tool("qpdf", ["--check", "FILE"], await file("pdf", cut)).status).toBe(0);
  });

  test("its structure, as poppler reads it, has every section in the order of the handout", async () => {
    const { out } = tool("pdfinfo", ["-struct-text", "FILE"], await file("pdf"));
    if (handout.direction === "rtl") {
      // poppler tells each line of Arabic as it is seen: the letters are the same, in another order.
      const heads = [...out.matchAll(/H2 \(block\)\n((?: +"[^"]*"\n)+)/g)].map(([, words = ""]) => lettersOf(words));
      expect(heads).toEqual(handout.sections.map(({ title }) => lettersOf(wordsOf(title))));
      return;
    }
    const read = bare(out.replace(/^\s*\w+( \([^)]*\))?$/gm, "").replaceAll('"', ""));
    let from = 0;
    for (const { title } of handout.sections) {
      const at = read.indexOf(bare(wordsOf(title)), from);
      expect(at, wordsOf(title)).toBeGreaterThanOrEqual(from);
      from = at + 1;
    }
  });

  test("the calendar is read by ical.js in strict mode and by python3-icalendar, with the same visits", async () => {
    const text = new TextDecoder().decode(await file("ics"));
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent");
    const uids = handout.events.map(({ uid }) => uid);
    expect(uids.length).toBeGreaterThan(0);
    expect(events.map((event) => event.getFirstPropertyValue("uid"))).toEqual(uids);
    const python = JSON.parse(
      execFileSync("/usr/bin/python3", ["tests/calendar/read.py"], { input: text, encoding: "utf8" }),
    );
    expect(python.errors).toEqual([]);
    expect(python.events.map(({ uid }: { uid: string }) => uid)).toEqual(uids);
  });
});

// In every language that says all of it: German words are long, and Vietnamese is set in another font.
const spoken = house.locales.tags.filter((tag) => existsSync(`locales/${tag}/letter.json`));
test.each(cases.flatMap((name) => spoken.map((language) => [name, language] as const)))(
  "page one of %s in %s tells whom to ring, what comes next and every sign of the first list to go for",
  async (name, language) => {
    const handout = handoutOf(factsOf(name), language);
    const [pdf] = whole(await render(handout, house, { paper: "letter", large: false, formats: ["pdf"] }));
    const { out } = tool("pdftotext", ["-l", "1", "FILE", "-"], pdf?.bytes ?? new Uint8Array());
    const page = letters(out);
    const urgent = urgentWords(handout);
    if (handout.direction === "ltr") for (const words of urgent) expect(page).toContain(letters(words));
    else {
      // poppler puts Arabic lines back in order piece by piece: word by word, 95 of a hundred come back.
      const words = urgent.flatMap((line) => line.match(/[\p{L}\p{M}\p{Nd}]{2,}/gu) ?? []).map(letters);
      const lost = words.filter((word) => !page.includes(word));
      expect(words.length).toBeGreaterThan(20);
      expect(lost.length / words.length, lost.join(" ")).toBeLessThanOrEqual(0.05);
    }
  },
);

test.each(cases.flatMap((name) => spoken.map((language) => [name, language] as const)))(
  "the short form of %s in %s is one page on both papers and in both sizes, and tells no less than page one",
  async (name, language) => {
    const document = "first-page";
    const facts: Facts = factsOf(name);
    const handout = whole(compose(facts, house, { language, document }));
    expect(handout.sections.map(({ id }) => id)).toEqual(["ring", "next", "go-now"]);
    expect(urgentWords(handout)).toEqual(urgentWords(handoutOf(facts, language)));
    expect(JSON.stringify(handout.sections.at(-1))).toContain(cautionIn(language));
    for (const cut of cuts) {
      const [pdf] = whole(await render(handout, house, { ...cut, document, formats: ["pdf"] }));
      expect(pdf?.name).toBe("first-page.pdf");
      expect(tool("pdfinfo", ["FILE"], pdf?.bytes ?? new Uint8Array()).out).toMatch(/^Pages: +1$/m);
    }
  },
);

/** "This does not replace your vet …" */
function cautionIn(language: string): string {
  const { about } = JSON.parse(house.locales.texts[`locales/${language}/handout.json`] ?? "{}");
  return about?.["in-short"] ?? cautionIn("en");
}

test("a short form that does not fit on one page is a problem, and no second page", async () => {
  const handout = whole(compose(factsOf("dog-cheek-abscess"), house, { language: "en", document: "first-page" }));
  const [ring, ...rest] = handout.sections;
  const long = { ...handout, sections: ring ? [ring, ring, ring, ...rest] : [] };
  const { value, problems } = await render(long, house, {
    ...{ paper: "letter", large: true, document: "first-page", formats: ["pdf"] },
  });
  expect(value).toBeNull();
  expect(problems.map(({ code }) => code)).toEqual(["page-full"]);
});

/** poppler joins a word that a line ends in at its hyphen, adds marks of direction, and moves those over a letter. */
const letters = (words: string): string =>
  words.normalize("NFKC").replace(/[\s\p{M}\p{Bidi_Control}\u00ad\u2010-]/gu, "");

/** Phones, dates and doses of the first two sections, and each sign of the first list to go for. */
function urgentWords({ sections }: Handout): string[] {
  const inside = (id: string) => JSON.stringify(sections.find((section) => section.id === id) ?? {});
  const values = ["ring", "next"].flatMap((id) => {
    const found: string[] = [];
    JSON.parse(inside(id), (_, node) => {
      if (["phone", "when", "dose"].includes(node?.kind)) found.push(node.text);
      return node;
    });
    return found;
  });
  const list = sections.find(({ id }) => id === "go-now")?.blocks.find((block) => block.kind === "list");
  const signs = list?.kind === "list" ? list.items.map(({ inlines }) => wordsOf(inlines)) : [];
  expect(values.length).toBeGreaterThanOrEqual(4);
  expect(signs.length).toBeGreaterThanOrEqual(3);
  return [...values, ...signs];
}

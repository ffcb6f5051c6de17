import { describe, expect, it } from "vitest";
import { compose } from "#compose/compose.js";
import { openLocales } from "#locale/locales.js";
import { readClinicReviews, withClinicReview } from "#locale/status/clinic-review.js";
import { stamped, stampsOf } from "#locale/status/stamps.js";
import { statusesOf, statusOf } from "#locale/status/status.js";
import { dog } from "../compose/fixture.js";
import { locales as shipped, templates } from "../compose/shipped.js";

type Files = { en?: object; es?: object; problems?: object; status?: string };
const base = { en: { a: "One.", b: { c: "Two." } }, es: { a: "Uno.", b: { c: "Dos." } } };
function open({ en = base.en, es = base.es, problems = {}, status = "{}" }: Files = {}) {
  const { value } = openLocales({
    "locales/en/handout.json": JSON.stringify(en),
    "locales/en/problems/plan.json": JSON.stringify(problems),
    "locales/es/handout.json": JSON.stringify(es),
    "locales/es/problems/plan.json": JSON.stringify(problems),
    "locales/es/status.json": status,
  });
  if (!value) throw new Error("no locales");
  return value;
}
const stamp = (files: Files, options = {}) => {
  const locales = open(files);
  return stamped(statusesOf(locales, "es"), stampsOf(locales, "es"), options);
};
const status = stamp({}).text;

describe("a sentence's status", () => {
  it("the source is original, and nobody needs to have reviewed it", () =>
    expect(statusOf(open(), "en")).toMatchObject({ state: "original", stale: [] }));

  it("without a stamp nobody knows what it was made from: it is stale", () =>
    expect(statusOf(open(), "es")).toMatchObject({
      state: "unreviewed",
      complete: 2,
      stale: ["handout:a", "handout:b.c"],
    }));

  it("stamped it is fresh, and read by nobody", () =>
    expect(statusOf(open({ status }), "es")).toMatchObject({
      state: "unreviewed",
      stale: [],
      reviewed: { fluent: 0 },
    }));

  it("a changed source makes its translation stale, and no other", () => {
    const en = { ...base.en, a: "One!" };
    expect(statusOf(open({ en, status }), "es").stale).toEqual(["handout:a"]);
    expect(stamp({ en, status }).left).toEqual(["handout:a"]);
    expect(stamp({ en, status }, { stillRight: ["handout:a"] }).left).toEqual([]);
    const changed = { en, es: { ...base.es, a: "¡Uno!" }, status };
    expect(stamp(changed).left).toEqual([]);
    expect(statusOf(open({ ...changed, status: stamp(changed).text }), "es").stale).toEqual([]);
  });

  it("is reviewed when a translator has read all of it, and no longer when a word changes", () => {
    const fluent = stamp({ status }, { by: "fluent" }).text;
    expect(statusOf(open({ status: fluent }), "es")).toMatchObject({ state: "unreviewed", reviewed: { fluent: 2 } });
    const qualified = stamp({ status }, { by: "qualified" }).text;
    expect(statusOf(open({ status: qualified }), "es").state).toBe("reviewed");
    const es = { ...base.es, a: "Uno" };
    expect(statusOf(open({ es, status: qualified }), "es")).toMatchObject({
      state: "unreviewed",
      reviewed: { qualified: 1 },
    });
    const again = stamp({ es, status: qualified }).text;
    expect(statusOf(open({ es, status: again }), "es").reviewed.qualified).toBe(1);
  });

  it("an owner's page does not wait for the words that staff look for a topic by", () => {
    const topics = (name: string, also: string) => JSON.stringify({ cut: { name, also } });
    const open = (status: string) =>
      openLocales({
        "locales/en/topics.json": topics("Cut", "wound"),
        "locales/es/topics.json": topics("Corte", "herida"),
        "locales/es/status.json": status,
      }).value;
    const before = open("{}");
    if (!before) throw new Error("no locales");
    const name = statusesOf(before, "es").filter((one) => one.name === "topics:cut.name");
    const read = open(stamped(name, {}, { by: "qualified" }).text);
    expect(read && statusOf(read, "es")).toMatchObject({ state: "reviewed", reviewed: { qualified: 1 } });
  });

  it("an owner's page does not wait for the problems told to staff", () => {
    const problems = { x: { what: "No", hint: "Yes" } };
    const qualified = stamp({ status }, { by: "qualified" }).text;
    expect(statusOf(open({ problems, status: qualified }), "es").state).toBe("reviewed");
  });
});

describe("a clinic's own review", () => {
  const review = { language: "es", by: "Ana Reyes", on: "2026-03-04" };
  it("counts as a translator's, for the words as they were read", () => {
    const reviews = withClinicReview(open({ status }), [], review);
    expect(statusOf(open({ status }), "es", reviews)).toMatchObject({ state: "reviewed", reviewed: { clinic: 2 } });
    const es = { ...base.es, a: "Uno" };
    expect(statusOf(open({ es, status }), "es", reviews)).toMatchObject({
      state: "unreviewed",
      reviewed: { clinic: 1 },
    });
    expect(readClinicReviews(JSON.stringify(reviews))).toEqual(reviews);
    expect(withClinicReview(open({ status }), reviews, { ...review, by: "Leo" }).map(({ by }) => by)).toEqual(["Leo"]);
  });
  it.each(["", "{}", "[1]", '[{"language":"es"}]'])("%j holds none", (text) =>
    expect(readClinicReviews(text)).toBeNull(),
  );
});

describe("an owner's page", () => {
  const notice = (
    language: string,
    reviews = withClinicReview(shipped, [], { language, by: "Ana", on: "2026-03-04" }),
  ) => compose(dog, { language, templates, locales: shipped, reviews }).value?.translationNotice;
  it("says in both languages that nobody qualified has read it", () =>
    expect(notice("es", [])).toMatchObject([{ kind: "text" }, { kind: "passage", language: "en" }]));
  it("says nothing once the clinic has, nor in the language it was written in", () => {
    expect(notice("es")).toEqual([]);
    expect(notice("en", [])).toEqual([]);
  });
});

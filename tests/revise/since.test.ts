/** What is normal for some days is so from the first paper on that tells of the care, and not from each new one. */
import { describe, expect, test } from "vitest";
import type { Care, Statement } from "#compute/facts.js";
import { sinceBefore } from "#compute/since.js";

const from = { file: "plan", line: 1, column: 1, length: 1 };
const care = (topic: string, since: string, more: Partial<Care> = {}): Care => ({
  ...{ topic, site: "cheek", side: "left", bandage: null, since, done: [], from },
  ...more,
});
const said = (id: string, days: string | null, topics = ["wound"]): Statement => ({
  ...{ id, topics, from },
  values: days === null ? {} : { days: { value: days, unit: "day" } },
});
const daysOf = (list: Statement[]) =>
  list.map(({ id, values: { days } }) => (typeof days === "object" ? `${id} ${days.value}` : id));

/** A wound first told of on the 2nd, and what is left on the paper of a later day. */
function on(day: string, now: Care[], normal: Statement[], before = [care("wound", "2026-03-02")]) {
  const left = sinceBefore({ care: now, normal, avoid: normal }, { care: before }, day);
  expect(daysOf(left.avoid)).toEqual(daysOf(left.normal));
  return { since: left.care.map(({ since }) => since), normal: daysOf(left.normal) };
}

describe("what lasts some days", () => {
  test("has fewer left on each later paper, and goes when they are over; the rest stays", () => {
    const all = [said("quiet", "2"), said("swelling", "4"), said("bald", null)];
    const told = (day: string) => on(day, [care("wound", day)], all);
    expect(told("2026-03-02")).toEqual({ since: ["2026-03-02"], normal: ["quiet 2", "swelling 4", "bald"] });
    expect(told("2026-03-03").normal).toEqual(["quiet 1", "swelling 3", "bald"]);
    expect(told("2026-03-04").normal).toEqual(["swelling 2", "bald"]);
    expect(told("2026-03-05").normal).toEqual(["swelling 1", "bald"]);
    expect(told("2026-03-06")).toEqual({ since: ["2026-03-02"], normal: ["bald"] });
  });

  test("is counted anew for care that is new, and for that alone", () => {
    const day = "2026-03-06";
    const stitches = said("stitches", "3", ["closed"]);
    const anew = on(day, [care("closed", day)], [stitches]);
    expect(anew).toEqual({ since: [day], normal: ["stitches 3"] });
    const both = on(day, [care("wound", day), care("closed", day)], [said("quiet", "2"), stitches]);
    expect(both.normal).toEqual(["stitches 3"]);
    // Said of both, it is of the newer one.
    expect(
      on(day, [care("wound", day), care("closed", day)], [said("quiet", "2", ["wound", "closed"])]).normal,
    ).toEqual(["quiet 2"]);
  });

  test("another place is other care, another bandage is not", () => {
    const day = "2026-03-05";
    const since = (more: Partial<Care>) => on(day, [care("wound", day, more)], []).since;
    expect(since({ bandage: "tie-over" })).toEqual(["2026-03-02"]);
    expect(since({ side: "right" })).toEqual([day]);
    expect(since({ site: "paw" })).toEqual([day]);
  });

  test("that is of no care, and what is no number of days, stays as it is", () => {
    const values = { time: { value: "24", unit: "h" }, syringe: "U-100" };
    const other: Statement = { ...said("awake", null), values };
    const day = "2026-03-09";
    const { normal } = sinceBefore(
      { care: [care("wound", day)], normal: [other, said("medicine", "2", ["carprofen"])], avoid: [] },
      { care: [care("wound", "2026-03-02")] },
      day,
    );
    expect(normal).toEqual([other, said("medicine", "2", ["carprofen"])]);
  });
});

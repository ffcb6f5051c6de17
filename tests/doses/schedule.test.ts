/** All doses at home, one after the other. The dog goes home at 16:30 on 2026-03-02. */
import { expect, test } from "vitest";
import { only, q, told, type Written } from "./help.js";

const tablets: Written = { name: "x", tablet: q("5 mg"), give: q("1 tablet"), "last given": "08:00" };

test("each has its number, its step's amount and the medicine it is of", () => {
  const next = [{ give: q("2 tablets"), every: "24 h", for: q("2 days") }];
  const { doses } = only({ ...tablets, for: q("1 day"), next });
  expect(doses.map(({ from: _, ...dose }) => dose)).toEqual([
    { medicine: "x", number: 1, at: "2026-03-02T20:00", slot: "20:00", part: "evening", give: q("1 tablet") },
    { medicine: "x", number: 2, at: "2026-03-03T08:00", slot: "08:00", part: "morning", give: q("1 tablet") },
    { medicine: "x", number: 3, at: "2026-03-03T20:00", slot: "20:00", part: "evening", give: q("2 tablets") },
    { medicine: "x", number: 4, at: "2026-03-04T20:00", slot: "20:00", part: "evening", give: q("2 tablets") },
  ]);
});

// From 06:00 to 22:00 are 16 hours, and eight back: less than nine, three quarters of twelve.
test("a household's times that are too uneven for two a day are told at every step that has them", () => {
  const household = { morning: "06:00", evening: "22:00" };
  const next = [
    { give: q("1 tablet"), every: "24 h", for: q("2 days") },
    { give: q("1 tablet"), every: "twice a day", for: q("2 days") },
  ];
  const uneven = { medicine: "x", morning: "06:00", evening: "22:00", every: 12 };
  expect(told("household-times-uneven", { ...tablets, next }, { household })).toEqual([
    { at: "0/every", ...uneven },
    { at: "0/next/1/every", ...uneven },
  ]);
  expect(told("household-times-uneven", { ...tablets, next })).toEqual([]);
});

/** The times of day for a medicine, shared out by hand over a household's hours. */
import { describe, expect, test } from "vitest";
import type { Every } from "#compute/doses/every.js";
import { partOf, slotsFor } from "#compute/doses/slots.js";

const times = (every: Partial<Every> & { hours: number }, morning = "08:00", evening = "20:00") => {
  const { slots, even } = slotsFor({ by: "hours", at: null, ...every }, { morning, evening });
  return [...slots.map(({ at, part }) => `${at} ${part}`), ...(even ? [] : ["uneven"])];
};

test.each([
  ["00:00", "bedtime"],
  ["04:59", "bedtime"],
  ["05:00", "morning"],
  ["10:59", "morning"],
  ["11:00", "midday"],
  ["16:59", "midday"],
  ["17:00", "evening"],
  ["20:59", "evening"],
  ["21:00", "bedtime"],
])("%s is %s", (at, part) => expect(partOf(at)).toBe(part));

describe("once a day", () => {
  test("is at the time the plan says, or at either", () => {
    expect(times({ hours: 24, at: "morning" }, "07:30", "19:00")).toEqual(["07:30 morning"]);
    expect(times({ hours: 24, at: "evening" }, "07:30", "19:00")).toEqual(["19:00 evening"]);
    expect(times({ hours: 24 }, "07:30", "19:00")).toEqual(["07:30 morning", "19:00 evening"]);
    expect(times({ hours: 48, by: "times" })).toEqual(["08:00 morning", "20:00 evening"]);
  });
});

describe("two a day", () => {
  test("are morning and evening, with nine hours to fifteen between them", () => {
    expect(times({ hours: 12 }, "08:00", "17:00")).toEqual(["08:00 morning", "17:00 evening"]);
    expect(times({ hours: 12 }, "08:00", "23:00")).toEqual(["08:00 morning", "23:00 evening"]);
    expect(times({ hours: 12, by: "times" }, "08:00", "17:00")).toEqual(["08:00 morning", "17:00 evening"]);
  });

  test("that lie nearer are set evenly from the morning, which is told", () => {
    expect(times({ hours: 12 }, "08:00", "16:59")).toEqual(["08:00 morning", "20:00 evening", "uneven"]);
    expect(times({ hours: 12, by: "times" }, "08:00", "23:01")).toEqual(["08:00 morning", "20:00 evening", "uneven"]);
    expect(times({ hours: 12 }, "05:45", "20:46")).toEqual(["05:45 morning", "17:45 evening", "uneven"]);
  });
});

describe("three a day", () => {
  test("by the household's meals end with the evening", () => {
    expect(times({ hours: 8, by: "times" })).toEqual(["08:00 morning", "14:00 midday", "20:00 evening"]);
    expect(times({ hours: 8, by: "times" }, "07:00", "19:00")).toEqual([
      "07:00 morning",
      "13:00 midday",
      "19:00 evening",
    ]);
  });

  // Ten waking hours would leave five between doses, less than three quarters of eight.
  test("that do not fit into the household's day go through the night", () => {
    expect(times({ hours: 8, by: "times" }, "09:00", "19:00")).toEqual([
      "09:00 morning",
      "17:00 evening",
      "01:00 bedtime",
    ]);
  });

  // Bedtime is three hours after the evening's medicines, at the latest half past eleven.
  test("every eight hours end at bedtime, the middle one on a half hour", () => {
    expect(times({ hours: 8 })).toEqual(["08:00 morning", "15:30 midday", "23:00 bedtime"]);
    expect(times({ hours: 8 }, "06:00", "19:00")).toEqual(["06:00 morning", "14:00 midday", "22:00 bedtime"]);
    expect(times({ hours: 8 }, "09:00", "20:30")).toEqual(["09:00 morning", "16:30 midday", "23:30 bedtime"]);
    expect(times({ hours: 8 }, "08:00", "21:30")).toEqual(["08:00 morning", "16:00 midday", "23:30 bedtime"]);
  });

  // From 22:00 to 10:00 are twelve hours, more than five quarters of eight; to 08:00 are ten, which is not.
  test("every eight hours wait no longer than ten", () => {
    expect(times({ hours: 8 }, "10:00", "19:00")).toEqual(["10:00 morning", "18:00 evening", "02:00 bedtime"]);
    expect(times({ hours: 8 }, "08:00", "19:00")).toEqual(["08:00 morning", "15:00 midday", "22:00 bedtime"]);
    expect(times({ hours: 8 }, "08:15", "19:00")).toEqual(["08:15 morning", "16:15 midday", "00:15 bedtime"]);
  });
});

describe("the household's own times", () => {
  test("stand to the minute, whatever is shared out between them", () => {
    expect(times({ hours: 8, by: "times" }, "07:20", "20:05")).toEqual([
      "07:20 morning",
      "13:30 midday",
      "20:05 evening",
    ]);
  });

  // Twelve hours leave six for each of two gaps, three quarters of eight, and not a minute to round by.
  test("are met to the minute where a half hour would come too near", () => {
    expect(times({ hours: 8, by: "times" }, "06:45", "18:45")).toEqual([
      "06:45 morning",
      "12:45 midday",
      "18:45 evening",
    ]);
    expect(times({ hours: 8, by: "times" }, "07:40", "19:39")).toEqual([
      "07:40 morning",
      "15:40 midday",
      "23:40 bedtime",
    ]);
  });

  test("are the morning also before five, where the nights are used too", () => {
    expect(times({ hours: 8 }, "04:30", "14:30")).toEqual(["04:30 morning", "12:30 midday", "20:30 evening"]);
  });
});

describe("four a day or more", () => {
  test("by the household's hours end at bedtime", () => {
    expect(times({ hours: 6, by: "times" })).toEqual([
      "08:00 morning",
      "13:00 midday",
      "18:00 evening",
      "23:00 bedtime",
    ]);
  });

  test("by the clock go through the night", () => {
    expect(times({ hours: 6 })).toEqual(["08:00 morning", "14:00 midday", "20:00 evening", "02:00 bedtime"]);
    expect(times({ hours: 4 }, "07:05")).toEqual([
      "07:05 morning",
      "11:05 midday",
      "15:05 midday",
      "19:05 evening",
      "23:05 bedtime",
      "03:05 bedtime",
    ]);
  });
});

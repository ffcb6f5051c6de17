import { expect, test } from "vitest";
import { nextTime } from "#compute/doses/next-time.js";
import { slotsFor } from "#compute/doses/slots.js";

const household = { morning: "08:00", evening: "20:00" };
const next = (given: string, hours: number, slotHours = hours, notBefore?: string) => {
  const { slots } = slotsFor({ hours: slotHours, by: "hours", at: null }, household);
  return nextTime(given, hours, slots, "UTC", notBefore).at;
};

test("the next dose is no nearer than three quarters of the interval", () => {
  expect(next("2026-03-02T11:00", 12)).toBe("2026-03-02T20:00");
  expect(next("2026-03-02T11:01", 12)).toBe("2026-03-03T08:00");
});

test("what is as near on both sides is given earlier, wherever in the list of times it stands", () => {
  // 24 h from 02:00: 20:00 is six hours early, 08:00 six hours late.
  expect(next("2026-03-02T02:00", 24)).toBe("2026-03-02T20:00");
  // 24 h from 06:00, of 08:00, 12:00, 16:00, 20:00, 00:00 and 04:00: two hours early, or two late.
  expect(next("2026-03-02T06:00", 24, 4)).toBe("2026-03-03T04:00");
});

test("a household time at the moment itself is past", () => {
  expect(next("2026-03-02T20:00", 0, 12)).toBe("2026-03-03T08:00");
  expect(next("2026-03-02T08:00", 12, 12, "2026-03-02T20:00")).toBe("2026-03-03T08:00");
});

test("a week later is a week later, over the end of a month", () => {
  expect(next("2026-02-26T08:00", 168)).toBe("2026-03-05T08:00");
  expect(next("2026-03-02T08:00", 48)).toBe("2026-03-04T08:00");
});

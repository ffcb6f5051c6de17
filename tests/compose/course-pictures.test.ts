import { addDays, format, parseISO } from "date-fns";
import { expect, it } from "vitest";
import type { Certainty, Facts } from "#compute/facts.js";
import type { Figure, Month } from "#handout/handout.js";
import { blocksIn } from "#handout/walk.js";
import { courseOf, noSunday } from "../visits/help.js";
import { dog } from "./fixture.js";
import { composed } from "./shipped.js";

/** A course over the ends of two months, with every certainty, decisions and closed days. */
const discharged = "2026-02-24T16:30";
const course = courseOf({
  discharged,
  hours: noSunday,
  course: [
    "change every day for 3-4 days, first tomorrow",
    "then every 2-3 days until day 14",
    "maybe closure day 9-12",
    "sutures out 10-14 days after closure",
    "recheck day 36-38",
  ],
  booked: ["2026-02-25T09:30"],
});
const facts: Facts = { ...dog, discharged, course };
const blocks = [...blocksIn(composed(facts, "en").value ?? expect.fail())];
const months = blocks.filter((block): block is Month => block.kind === "month");
const strip = blocks.find((block): block is Figure => block.kind === "figure" && block.id === "course-strip");

const iso = (date: Date) => format(date, "yyyy-MM-dd");
const last =
  course.visits
    .map(({ latest }) => latest)
    .sort()
    .at(-1) ?? expect.fail();
const days = Array.from({ length: 39 }, (_, n) => iso(addDays(parseISO("2026-02-24"), n))).filter((day) => day <= last);

/** What may happen on a day, firmest first, from the visits alone. */
function firmest(day: string): Certainty | "closed" | "discharge" | "nothing" {
  if (day === "2026-02-24") return "discharge";
  const here = course.visits.filter((visit) => visit.days.includes(day));
  const sure = here.map(({ certainty, unless }) => (unless ? "expected" : certainty));
  const order = ["booked", "expected", "possible"] as const;
  return order.find((one) => sure.includes(one)) ?? (parseISO(day).getDay() === 0 ? "closed" : "nothing");
}

it("the course has every kind of day", () => {
  expect(days).toHaveLength(39);
  expect(new Set(days.map(firmest))).toEqual(
    new Set(["discharge", "booked", "expected", "possible", "closed", "nothing"]),
  );
});

it("a grid for each month the course touches, each of its days once, with its mark", () => {
  expect(months.map((month) => month.iso)).toEqual(["2026-02", "2026-03", "2026-04"]);
  const cells = months.flatMap(({ weeks }) => weeks.flat()).filter(({ inMonth }) => inMonth);
  expect(new Set(cells.map((cell) => cell.iso)).size).toBe(cells.length);
  for (const day of days) {
    const marks = cells.find((cell) => cell.iso === day)?.marks.map(({ mark }) => mark) ?? expect.fail(day);
    expect([day, marks[0] ?? "nothing"]).toEqual([day, firmest(day)]);
  }
  // The marks are told once, under the last grid.
  expect(months.map(({ legend }) => legend.length > 0)).toEqual([false, false, true]);
});

it("the strip draws each day with the shape of its mark", () => {
  const { shapes = [] } = strip ?? expect.fail();
  const looks = shapes
    .slice(0, days.length)
    .map((shape) => `${shape.fill} ${shape.stroke ?? ""} ${shape.dashed ?? ""}`);
  const look = new Map<string, string>();
  for (const [i, day] of days.entries()) {
    const mark = firmest(day);
    if (mark === "nothing" || mark === "discharge") continue;
    look.set(mark, look.get(mark) ?? looks[i] ?? "");
    expect([day, looks[i]]).toEqual([day, look.get(mark)]);
  }
  expect(new Set(look.values()).size).toBe(look.size);
});

it("the strip is told in words, day by day", () => {
  const { alt } = strip ?? expect.fail();
  const dayOf = (words: string) => iso(new Date(`${words} 2026`));
  const told = [...alt.matchAll(/: ([^.]+)[.]/g)].map(([, list = ""]) =>
    [...list.matchAll(/([A-Z][a-z]+\u00a0\d+)(?: to ([A-Z][a-z]+\u00a0\d+))?/g)].flatMap(([, from = "", to = from]) =>
      days.filter((day) => dayOf(from) <= day && day <= dayOf(to)),
    ),
  );
  const marks = ["discharge", "booked", "expected", "possible", "closed"];
  expect(told).toEqual(marks.map((mark) => days.filter((day) => firmest(day) === mark)));
});

it("a course of a week is shown whole by its strip; the time of a next visit is spoken of where there is a next", () => {
  const about = (lines: string[]) => {
    const facts: Facts = { ...dog, discharged, course: courseOf({ discharged, hours: noSunday, course: lines }) };
    const blocks = [...blocksIn(composed(facts, "en").value ?? expect.fail())];
    return {
      strips: blocks.filter((block) => block.kind === "figure" && block.id === "course-strip").length,
      grids: blocks.filter((block) => block.kind === "month").length,
      next: JSON.stringify(blocks).includes("At each visit we choose the time of the next."),
    };
  };
  expect(about(["recheck day 3-5"])).toEqual({ strips: 1, grids: 0, next: false });
  expect(about(["recheck day 3-5", "recheck day 8-9"])).toEqual({ strips: 1, grids: 2, next: true });
});

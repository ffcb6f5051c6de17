import { describe, expect, test } from "vitest";
import { clockIn } from "#render/html/live/clock.js";
import { nowAt } from "#render/html/live/view.js";
import { pageScript } from "#render/html/page-script.js";
// @ts-expect-error a script without types
import { pageScript as madeAnew } from "../../scripts/page-script.mjs";
import { live } from "../handouts/live.js";

const nothing = () => false;
const at = (now: string, ticked: (id: string) => boolean = nothing) => nowAt(live, now, ticked);
const numbers = (now: string) => at(now).ring.map(({ text }) => text);

test("the script in the page is made of what is in src", async () => {
  expect(pageScript).toBe(await madeAnew());
});

// Clock changes of 2026: America/Chicago on 8 March and 1 November, Europe/Madrid on 29 March and 25 October, each from the
// IANA time zone database; Kathmandu is 5 h 45 min east of Greenwich all year.
describe("the clinic's clock", () => {
  test.each([
    ["America/Chicago", "2026-03-08T07:59:00Z", "2026-03-08T01:59"],
    ["America/Chicago", "2026-03-08T08:00:00Z", "2026-03-08T03:00"],
    ["America/Chicago", "2026-11-01T06:30:00Z", "2026-11-01T01:30"],
    ["America/Chicago", "2026-11-01T07:30:00Z", "2026-11-01T01:30"],
    ["America/Chicago", "2026-11-01T08:30:00Z", "2026-11-01T02:30"],
    ["America/Chicago", "2026-03-02T06:00:00Z", "2026-03-02T00:00"],
    ["Europe/Madrid", "2026-03-29T01:00:00Z", "2026-03-29T03:00"],
    ["Europe/Madrid", "2026-10-25T01:00:00Z", "2026-10-25T02:00"],
    ["Asia/Kathmandu", "2026-03-02T18:15:00Z", "2026-03-03T00:00"],
  ])("%s at %s shows %s", (zone, now, shown) => {
    expect(clockIn(zone, new Date(now))).toBe(shown);
  });
});

describe("open or closed", () => {
  test.each([
    ["2026-03-04T08:00", "Open now until 18:00"],
    ["2026-03-04T17:59", "Open now until 18:00"],
    ["2026-03-04T18:00", "Opens tomorrow 08:00"],
    ["2026-03-04T02:30", "Opens today 08:00"],
    ["2026-03-06T23:00", "Opens tomorrow 09:00"],
    ["2026-03-07T13:00", "Opens Mon 08:00"],
    ["2026-03-08T12:00", "Opens tomorrow 08:00"],
  ])("%s: %s", (now, said) => {
    expect(at(now).said).toBe(said);
    expect(numbers(now)).toEqual(said.startsWith("Open now") ? ["(312) 555-0142"] : ["(312) 555-0187"]);
  });

  test("a day the clinic is shut is closed all day, and is not when it opens next", () => {
    expect(at("2026-03-10T10:00").said).toBe("Opens tomorrow 08:00");
    expect(numbers("2026-03-10T10:00")).toEqual(["(312) 555-0187"]);
    expect(at("2026-03-09T20:00").said).toBe("Opens Wed 08:00");
  });

  test("a clinic that is shut for a week names no day that could be taken for this week's", () => {
    const shut = Array.from({ length: 14 }, (_, i) => `2026-03-${String(i + 3).padStart(2, "0")}`);
    expect(nowAt({ ...live, shut }, "2026-03-05T10:00", nothing).said).toBe("Closed now");
  });

  test("two stretches a day: closed between them", () => {
    const [first] = live.week;
    if (!first) throw new Error("no week");
    const week = [
      { ...first, weekday: 3, open: "14:00", close: "18:00", now: "afternoon" },
      { ...first, weekday: 3, open: "08:00", close: "12:00", now: "morning" },
    ];
    const said = (time: string) => nowAt({ ...live, week }, `2026-03-04T${time}`, nothing).said;
    expect([said("09:00"), said("13:00"), said("15:00")]).toEqual(["morning", first.next.today, "afternoon"]);
  });

  test("before the discharge and after the last known day it does not claim to know, and shows both numbers", () => {
    for (const now of ["2026-03-01T10:00", "2026-05-16T10:00"]) {
      expect(at(now).said).toBe("Unsure");
      expect(numbers(now)).toEqual(["(312) 555-0142", "(312) 555-0187"]);
    }
    expect(at("2026-05-15T10:00").said).toBe("Open now until 18:00");
  });
});

describe("what is due", () => {
  const texts = (list: { when: string; text: string }[]) => list.map(({ when, text }) => `${when}: ${text}`);

  test("a dose is next, then due for two hours, then only asked about", () => {
    expect(texts(at("2026-03-03T07:59").next)).toEqual(["today 08:00: amox 1", "today 08:00: carp 1"]);
    expect(texts(at("2026-03-03T08:00").due)).toEqual(["today 08:00: amox 1", "today 08:00: carp 1"]);
    expect(texts(at("2026-03-03T09:59").due)).toEqual(["today 08:00: amox 1", "today 08:00: carp 1"]);
    expect(at("2026-03-03T10:00").due).toEqual([]);
    expect(texts(at("2026-03-03T10:00").asked)).toEqual(["today 08:00: amox 1", "today 08:00: carp 1"]);
    expect(texts(at("2026-03-03T10:00").next)).toEqual(["today 20:00: amox 2"]);
  });

  test("only the newest dose of a medicine is asked about, and none that is ticked", () => {
    expect(texts(at("2026-03-04T02:30").asked)).toEqual(["2026-03-03 20:00: amox 2", "2026-03-03 08:00: carp 1"]);
    expect(texts(at("2026-03-04T02:30", (id) => id === "dose-amox-2").asked)).toEqual(["2026-03-03 08:00: carp 1"]);
  });

  test("steps are those of the part of the day, at night those of the next part that has some", () => {
    expect(at("2026-03-03T05:00").steps.title).toBe("Morning");
    expect(at("2026-03-03T12:00").steps.title).toBe("Evening");
    expect(at("2026-03-03T02:00").steps.title).toBe("Morning");
    const ids = (now: string) => at(now).steps.list.map(({ id }) => id);
    expect(ids("2026-03-03T08:00")).not.toEqual(ids("2026-03-04T08:00"));
  });

  test("the next visit is the agreed one until its time, then the next; a window until its last day", () => {
    expect(at("2026-03-03T09:30").visit?.when).toBe("today 09:30");
    expect(at("2026-03-03T09:31").visit?.when).toBe("March 6 to 7");
    expect(at("2026-03-07T23:59").visit?.when).toBe("March 6 to 7");
    expect(at("2026-03-08T00:00").visit).toBeNull();
  });

  test("after the last day nothing is due and it says to ring", () => {
    expect(at("2026-03-17T08:00")).toMatchObject({ over: "Over", due: [], asked: [], next: [], visit: null });
    expect(at("2026-03-17T08:00").steps.list).toEqual([]);
  });
});

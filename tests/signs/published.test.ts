import { describe, expect, test } from "vitest";
import { tables } from "./help.js";

/** Sources as in ../shared/facts: what each says, beside what we print. Weak ones (public practice sheets) say so. */
const { signs, steps } = tables.statements;
const sign = (id: string) => signs.find((row) => row.id === id) ?? expect.fail(id);
const step = (id: string) => steps.find((row) => row.id === id) ?? expect.fail(id);

describe("what is said of a bandage", () => {
  // Cote, Clinical Veterinary Advisor: Dogs and Cats, 4th ed, p. 3234: wet, soiled or smelly, it is changed immediately.
  // Public practice sheets (UK, US; weak): wet, ring the same day. One (NZ; weak): smell or discharge, within 12 hours.
  test.each(["bandage-wet", "bandage-smell", "bandage-stain", "bandage-off", "bandage-chewing"])(
    "%s: nobody waits for the next visit",
    (id) => expect(["now", "today"]).toContain(sign(id).urgency),
  );

  // Public practice sheets (weak): the toes twice a day, or three to four times; swollen, cold or painful toes are a warning.
  test("the toes are looked at two to four times a day", () => {
    const { length } = step("check-toes").times;
    expect(length >= 2 && length <= 4).toBe(true);
    expect(step("check-toes").times).not.toContain("any");
    expect(sign("toes").urgency).toBe("now");
  });

  // A specialist practice (AU; weak) 30 minutes, a practice (US; weak) 60: the shorter.
  test("a cover against wet comes off after 30 minutes", () =>
    expect(step("cover-outside").values).toEqual({ minutes: { value: "30", unit: "min" } }));

  test("every bandage is looked at at home, and kept dry", () => {
    for (const { id, steps, signs } of tables.bandages) {
      expect([id, steps.includes("keep-dry")]).toEqual([id, true]);
      expect([id, signs.some((one) => one.id === "bandage-wet")]).toEqual([id, true]);
    }
  });

  // Only a bandage or cast of a limb can stop the blood of the toes.
  test("the toes are watched under a bandage of a limb, and under no other", () => {
    const watched = tables.bandages.filter(({ steps }) => steps.includes("check-toes")).map(({ id }) => id);
    expect(watched).toEqual(["limb-wrap"]);
    const topics = tables.topics.filter(({ steps }) => steps.includes("check-toes")).map(({ id }) => id);
    expect(topics).toEqual(["splint-or-cast"]);
  });
});

// Cote, 4th ed, p. 3234: sometimes every day at first, then several days in a row where it no longer drains, weekly for
// support. Common practice, no source: the first change is the next day, then daily for 3 to 5 days.
test("the usual courses of a bandage", () => {
  const usual = (id: string) => tables.topics.find((topic) => topic.id === id)?.usualCourse;
  expect(usual("open-wound-clinic-bandage")).toEqual([
    "change every day for 3-5 days, first tomorrow",
    "change every 2-3 days until day 14",
  ]);
  expect(usual("splint-or-cast")?.[0]).toMatch(/^splint change every 7 days/);
});

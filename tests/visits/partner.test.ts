import { expect, test } from "vitest";
import { courseOf, noSunday } from "./help.js";

// Discharged on Monday 2 March; the clinic is closed on Sunday the 8th, and the partner open.
test("a visit that waits for the case's clinician is never put at the partner clinic, where they are not", () => {
  const hours = { ...noSunday, sunday: [{ open: "10:00", close: "14:00" }] };
  const partner = { name: "Lakeside", phone: "+13125550199", address: [], hours };
  const days = ["monday" as const, "saturday" as const, "sunday" as const];
  const at = (sees: string) =>
    courseOf({
      course: ["injection every day 2 times, first day 5"],
      hours: noSunday,
      clinician: "Dr. Haddad",
      clinic: { partner, clinicians: [{ name: "Dr. Haddad", days, away: [], sees: [sees] }] },
    }).visits.map(({ earliest, where }) => [earliest, where]);
  expect(at("flush")).toEqual([
    ["2026-03-07", null],
    ["2026-03-08", "Lakeside"],
  ]);
  expect(at("injection")).toEqual([
    ["2026-03-07", null],
    ["2026-03-09", null],
  ]);
});

import { expect, it } from "vitest";
import { textWith } from "../examples/with-medicine.js";

const taper =
  "name: prednisolone, tablet: 5 mg, splits: halves, give: 2 tablets, every: 12 h, for: 2 days, last given: 08:00, " +
  "next: [{ give: 1 tablet, every: 24 h, for: 2 days }, { give: 0.5 tablet, every: every other day, for: 4 days }]";

// The dates are those of the chart, worked by hand in tests/doses/rules.test.ts.
it("tells every step of a taper in words, with its days", async () => {
  const english = await textWith(taper, "en");
  expect(english).toContain("The dose changes on the way.");
  for (const step of [
    "From Monday, March 2 at 8:00 PM to Wednesday, March 4 at 8:00 AM: Give 2 tablets by mouth 2 times each day, at 8:00 AM and 8:00 PM",
    "From Wednesday, March 4 at 8:00 PM to Thursday, March 5 at 8:00 PM: Give 1 tablet by mouth each day, at 8:00 PM",
    "From Friday, March 6 at 8:00 PM to Sunday, March 8 at 8:00 PM: Give half a tablet (½) by mouth every 2 days, at 8:00 PM",
  ])
    expect(english).toContain(step);
  const spanish = await textWith(taper, "es");
  for (const step of ["Dé 2 tabletas por la boca 2 veces al día", "Dé 1 tableta por la boca cada día", "cada 2 días"])
    expect(spanish).toContain(step);
});

it("tells a loading dose and what follows it, and an only dose as the only one", async () => {
  const loading =
    "name: meloxicam, liquid: 1.5 mg/mL, dose: 0.2 mg/kg, every: 24 h, for: 1 day, last given: not given, " +
    "next: [{ dose: 0.1 mg/kg, every: 24 h, for: 3 days }]";
  const text = await textWith(loading, "en");
  expect(text).toContain("On Monday, March 2 at 8:00 PM: Give 3.3 mL by mouth");
  expect(text).toContain(
    "From Tuesday, March 3 at 8:00 PM to Thursday, March 5 at 8:00 PM: Give 1.6 mL by mouth each day, at 8:00 PM",
  );
  const once = "name: moonflower, tablet: 5 mg, give: 1 tablet, every: 24 h, for: 1 day, last given: not given";
  expect(await textWith(once, "en")).toContain(
    "Give 1 tablet by mouth on Monday, March 2 at 8:00 PM. Give no more after that.",
  );
});

it("tells the steps of what is given only as needed", async () => {
  const needed =
    "name: moonflower, tablet: 5 mg, give: 2 tablets, every: 8 h, for: 3 days, as needed: at most 2 a day, " +
    "next: [{ give: 1 tablet, every: 8 h, for: 2 days }]";
  const text = await textWith(needed, "en");
  expect(text).toContain("For 3 days: Give 2 tablets by mouth, only if it is needed");
  expect(text).toContain("For 2 days: Give 1 tablet by mouth, only if it is needed");
  expect(text).toContain("Never give more than 2 doses in a day and a night.");
});

it("tells at a revision only the steps that are left, the next dose in place of the first, and a last one as the only one", async () => {
  const going = await textWith(`${taper}, started: 2026-02-28 16:30`, "en");
  // Two days earlier: 2 tablets to the morning of March 2, and from that evening one.
  expect(going).toContain(
    "From Monday, March 2 at 8:00 PM to Tuesday, March 3 at 8:00 PM: Give 1 tablet by mouth each day",
  );
  expect(going).not.toContain("Give 2 tablets by mouth");
  expect(going).toContain("Next dose: Monday, March 2 at 8:00 PM; last dose: Friday, March 6 at 8:00 PM");
  expect(going).not.toContain("First dose at home: Monday, March 2 at 8:00 PM; last dose: Friday, March 6 at 8:00 PM");
  const last = await textWith(
    "name: cephalexin, capsule: 500 mg, give: 1 capsule, every: 24 h, for: 2 days, last given: 20:00, started: 2026-02-28 21:00",
    "en",
  );
  expect(last).toContain("Give 1 capsule by mouth on Monday, March 2 at 8:00 PM. Give no more after that.");
});

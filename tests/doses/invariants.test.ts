/** What holds for every plan that can be built, whatever is in it. */
import { TZDate } from "@date-fns/tz";
import { Decimal } from "decimal.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { roundingPercent } from "#compute/doses/give.js";
import { doses, type Setting, type Written } from "./help.js";

const numRuns = Number(process.env["HEARTHSHEET_CASES"] ?? 100);

const zones = ["America/Chicago", "Europe/Madrid", "Asia/Kolkata", "America/St_Johns", "Pacific/Auckland", "UTC"];
const day = fc.constantFrom(
  "2026-03-02",
  "2026-03-07",
  "2026-03-28",
  "2026-10-24",
  "2026-10-31",
  "2026-12-30",
  "2028-02-27",
);
const clock = fc.integer({ min: 0, max: 95 }).map((n) => new Date(n * 900_000).toISOString().slice(11, 16));
const intervals = [
  "6 h",
  "8 h",
  "12 h",
  "24 h",
  "once a day",
  "twice a day",
  "3 times a day",
  "4 times a day",
  "every other day",
  "every morning",
  "once a week",
];

const amount = fc.integer({ min: 1, max: 12 });
/** The dose is ordered, and rounded to what can be given. */
const dosed = fc.integer({ min: 25, max: 450 }).map((tenths) => ({ value: String(tenths / 10), unit: "mg" as const }));
const form = fc.oneof(
  dosed.map((dose) => ({ tablet: { value: "10", unit: "mg" as const }, splits: "halves" as const, dose })),
  dosed.map((dose) => ({ liquid: { value: "7", unit: "mg/mL" as const }, dose })),
  amount.map((n) => ({ patch: "50", route: "skin" as const, give: { value: String(n), unit: "patch" as const } })),
  amount.map((n) => ({
    tablet: { value: "10", unit: "mg" as const },
    splits: "quarters" as const,
    give: { value: String(n / 4), unit: "tablet" as const },
  })),
  amount.map((n) => ({
    capsule: { value: "10", unit: "mg" as const },
    give: { value: String(n), unit: "capsule" as const },
  })),
  amount.map((n) => ({
    liquid: { value: "10", unit: "mg/mL" as const },
    give: { value: String(n / 10), unit: "mL" as const },
  })),
);
const days = fc.integer({ min: 1, max: 10 }).map((n) => ({ value: String(n), unit: "day" as const }));

/** A step of a taper: half of it, where half can be given. */
function half({ dose, give }: Pick<Written, "dose" | "give">): Pick<Written, "dose" | "give"> {
  const [of, unit] = dose ? [dose, 0.1] : [give, give?.unit === "tablet" ? 0.25 : give?.unit === "mL" ? 0.1 : 1];
  const less = new Decimal(of?.value ?? 1).div(2).div(unit).ceil().times(unit).toString();
  return dose ? { dose: { ...dose, value: less } } : give ? { give: { ...give, value: less } } : {};
}

const medicine = fc
  .record({ form, every: fc.constantFrom(...intervals), for: days, at: fc.option(clock), taper: fc.boolean() })
  .map(
    ({ form: made, at, taper, ...rest }): Written => ({
      name: "something",
      ...made,
      ...rest,
      "last given": at ?? "not given",
      ...(taper ? { next: [{ ...half(made), every: "24 h", for: { value: "2", unit: "day" } }] } : {}),
    }),
  );

const plan = fc.record({
  medicines: fc.array(medicine, { minLength: 1, maxLength: 3 }),
  zone: fc.constantFrom(...zones),
  discharged: fc.tuple(day, clock).map(([date, time]) => `${date}T${time}`),
  household: fc.constantFrom(
    { morning: "08:00", evening: "20:00" },
    { morning: "06:30", evening: "21:00" },
    { morning: "09:00", evening: "19:30" },
  ),
});

const hoursOf: Record<string, number> = {
  "6 h": 6,
  "8 h": 8,
  "12 h": 12,
  "24 h": 24,
  "once a day": 24,
  "twice a day": 12,
  "3 times a day": 8,
  "4 times a day": 6,
  "every other day": 48,
  "every morning": 24,
  "once a week": 168,
};
const elapsed = (from: string, to: string, zone: string) => {
  const at = (text: string) => {
    const [y = 0, m = 0, d = 0, h = 0, min = 0] = text.split(/[-T:]/).map(Number);
    return new TZDate(y, m - 1, d, h, min, zone).getTime();
  };
  return (at(to) - at(from)) / 3_600_000;
};

test(
  `the chart, the doses and what goes home agree (${numRuns} cases)`,
  () => {
    let built = 0;
    fc.assert(
      fc.property(plan, ({ medicines, zone, discharged, household }) => {
        const named = medicines.map((one, i) => ({ ...one, name: `something ${"abc"[i]}` }));
        const setting: Setting = { zone, discharged, household };
        const { value, problems } = doses(named, setting);
        const asked = new Set(
          problems.flatMap(({ code, values }) => (code === "rounding-too-far" ? [values.medicine] : [])),
        );
        fc.pre(value !== null);
        built++;
        const cells = value?.chart?.rows.flatMap((row) => row.cells).filter((cell) => cell !== null) ?? [];

        value?.medicines.forEach((computed, i) => {
          const written = named[i];
          const sum = (all: readonly { give: { value: string } }[]) =>
            Decimal.sum(0, ...all.map(({ give }) => give.value)).toString();
          const given = sum(computed.doses);
          expect(sum(cells.filter(({ medicine }) => medicine === computed.id))).toBe(given);
          expect(new Decimal(computed.dispense.value).minus(computed.leftOver.value).toString()).toBe(given);
          expect(new Decimal(computed.leftOver.value).lt(1)).toBe(true);

          const steps = [written, ...(written?.next ?? [])];
          const holds = written?.liquid?.value ?? "10";
          computed.steps.forEach(({ give }, n) => {
            const dose = steps[n]?.dose;
            if (!dose || asked.has(computed.name)) return;
            const off = new Decimal(give.value).times(holds).minus(dose.value).abs();
            expect(off.lte(new Decimal(dose.value).times(roundingPercent).div(100))).toBe(true);
          });
          if (written?.next?.[0]) expect(computed.steps[1]?.give).toEqual(computed.doses.at(-1)?.give);
          const total = computed.steps.reduce((all, { give, first, last }) => {
            const own = computed.doses.filter(({ at }) => first !== null && last !== null && first <= at && at <= last);
            expect(own.every((dose) => dose.give.value === give.value)).toBe(true);
            return all.plus(new Decimal(give.value).times(own.length));
          }, new Decimal(0));
          expect(total.toString()).toBe(given);

          const hours = hoursOf[written?.every ?? ""] ?? 0;
          const ordered = Math.ceil((Number(written?.for?.value) * 24) / hours) + (written?.next?.length ? 2 : 0);
          expect(computed.doses.map(({ number }) => number)).toEqual(Array.from({ length: ordered }, (_, n) => n + 1));

          const times = [computed.lastGiven, ...computed.doses.map(({ at }) => at)].filter((at) => at !== null);
          expect(computed.first !== null && computed.first > discharged).toBe(true);
          const shortest = written?.next?.length ? Math.min(hours, 24) : hours;
          times.slice(1).forEach((at, n) => {
            expect(elapsed(times[n] ?? "", at, zone)).toBeGreaterThanOrEqual(shortest * 0.75);
          });
        });
      }),
      { numRuns },
    );
    expect(built).toBeGreaterThan(numRuns / 4);
  },
  30_000 + numRuns * 100,
);

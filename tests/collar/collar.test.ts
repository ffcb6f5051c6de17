import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeCollar } from "#compute/collar/collar.js";
import type { Certainty, Course, Visit } from "#compute/facts.js";
import { placeText } from "#problems/place.js";
import { planWith, seen, tables } from "../signs/help.js";

const visit = (kind: string, earliest: string, certainty: Certainty = "expected"): Visit => {
  const from = { file: "plan.yaml", line: 1, column: 1, length: 1 };
  return {
    id: `${kind}-${earliest}`,
    purposes: [{ kind, number: 1, where: null, from }],
    certainty,
    earliest,
    ideal: earliest,
    latest: earliest,
    days: [earliest],
    at: null,
    minutes: 20,
    where: null,
    dependsOn: null,
    unless: null,
    from,
  };
};

const courseOf = (...visits: Visit[]): Course => ({
  visits,
  trips: { fewest: 0, likely: 0, most: 0 },
  purposes: [],
  ends: null,
  first: null,
  closed: [],
});

const changes = courseOf(visit("bandage-change", "2026-03-03"), visit("bandage-change", "2026-03-14"));
const cheek = "topic: open-wound-clinic-bandage, site: left cheek, bandage: tie-over, course: [change daily]";
const dog = "species: dog, sex: female";
const cat = "species: cat, sex: female";

const run = (collar: string, { course = changes, care = cheek, patient = dog } = {}) =>
  computeCollar(planWith([care], patient, `collar: { ${collar} }`), course, tables);
const told = (...args: Parameters<typeof run>) => run(...args).problems.map(({ code }) => code);
const first = (...args: Parameters<typeof run>) => run(...args).problems[0];

describe("the collar that fits", () => {
  it("is the shortest that passes the dog's nose by an inch: 20 cm + 2.54 cm asks for 25 cm", () => {
    const { value, problems } = run("neck: 41 cm, muzzle: 26 cm, length: 20 cm, until: bandage off");
    expect(problems).toEqual([]);
    expect(value).toMatchObject({
      kind: "cone",
      size: "L",
      depth: { value: "25", unit: "cm" },
      pastNose: { value: "5", unit: "cm" },
      margin: { value: "2.5", unit: "cm" },
      // Public shelter and practice sheets: one to two fingers.
      fingers: { least: 1, most: 2 },
      until: { event: "bandage-off", day: null },
    });
    expect(value && placeText(value.from)).toBe("plan.yaml:9:9");
  });

  it("is a soft one where a soft one is asked for", () => {
    const care = "topic: abscess-home-care, site: tail base";
    const asked = "type: soft cone, neck: 22 cm, length: 10 cm, until: 2026-03-15";
    const { value, problems } = run(asked, { care, patient: cat, course: courseOf(visit("recheck", "2026-03-12")) });
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ kind: "soft-cone", size: "soft M", until: { event: null, day: "2026-03-15" } });
  });

  it("works in inches as in centimetres", () => {
    // 16 in is 40.64 cm, 8 in is 20.32 cm.
    expect(run("neck: 16 in, length: 8 in, until: bandage off").value).toMatchObject({
      size: "L",
      margin: { value: "1", unit: "in" },
      pastNose: { value: "1.8", unit: "in" },
    });
  });

  it("does not take one that is a hair too short, and takes one that is just enough", () => {
    expect(run("neck: 39 cm, length: 17.46 cm, until: bandage off").value?.size).toBe("M");
    expect(run("neck: 39 cm, length: 17.47 cm, until: bandage off").value?.size).toBe("L");
  });

  it("says how to wear it, with the margin in the plan's own unit", () => {
    const { value } = run("neck: 41 cm, length: 20 cm, until: bandage off");
    const ids = value?.statements.map(({ id }) => id) ?? [];
    for (const id of ["all-the-time", "fingers", "check-fit", "meals", "sleep", "stairs", "cleaning", "trouble"])
      expect(ids).toContain(`collar.${id}`);
    expect(value?.statements.find(({ id }) => id === "collar.past-nose")?.values).toEqual({
      margin: { value: "2.5", unit: "cm" },
    });
  });

  it("is the shortest that passes by an inch and holds the neck, whatever the stock and the dog", () => {
    const size = fc.record({
      depth: fc.integer({ min: 8, max: 40 }),
      from: fc.integer({ min: 15, max: 60 }),
      wide: fc.nat(15),
    });
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 15, max: 70 }),
        fc.integer({ min: 5, max: 38 }),
        (sizes, neck, length) => {
          const plan = planWith([cheek], dog, `collar: { neck: ${neck} cm, length: ${length} cm, until: bandage off }`);
          const collars = sizes.map(({ depth, from, wide }, i) => ({
            size: String(i),
            kind: "cone" as const,
            depth: { value: String(depth), unit: "cm" as const },
            neck: {
              from: { value: String(from), unit: "cm" as const },
              to: { value: String(from + wide), unit: "cm" as const },
            },
          }));
          const { value } = computeCollar({ ...plan, clinic: { ...plan.clinic, collars } }, changes, tables);
          const good = sizes.filter(
            ({ depth, from, wide }) => depth - length >= 2.54 && from <= neck && neck <= from + wide,
          );
          expect(value?.depth?.value).toBe(
            good.length === 0 ? undefined : String(Math.min(...good.map(({ depth }) => depth))),
          );
          if (value?.pastNose) expect(new Decimal(value.pastNose.value).gte(2.54)).toBe(true);
        },
      ),
    );
  });
});

describe("where the clinic lists no collars", () => {
  const withoutStock = (collar: string) => {
    const plan = planWith([cheek], dog, `collar: { ${collar} }`);
    return computeCollar({ ...plan, clinic: { ...plan.clinic, collars: [] } }, changes, tables);
  };

  it("none is chosen, what it must be is told, and how to wear it stands on the page all the same", () => {
    const { value, problems } = withoutStock("neck: 41 cm, length: 20 cm, until: bandage off");
    // 20 cm and the inch that it must pass the nose by: 22.54 cm, rounded up.
    expect(problems).toMatchObject([
      { code: "collars-not-listed", severity: "note", values: { needed: "22.6 cm", neck: "41 cm", context: "" } },
    ]);
    expect(value).toMatchObject({ kind: "cone", size: null, depth: null, pastNose: null });
    expect(value?.statements.map(({ id }) => id)).toContain("collar.past-nose");
  });

  it("a ring is asked for its neck alone", () => {
    const { problems } = withoutStock("type: ring, neck: 41 cm, length: 20 cm, until: bandage off");
    const found = problems.find(({ code }) => code === "collars-not-listed");
    expect(found?.values).toMatchObject({ neck: "41 cm", context: "ring" });
  });
});

describe("where none fits, what is needed is said", () => {
  it("none of the kind", () => {
    expect(told("type: ring, neck: 41 cm, length: 20 cm, until: bandage off")).toContain("collar-none-in-stock");
  });
  it("all too short", () => {
    expect(first("neck: 50 cm, length: 29 cm, until: bandage off")).toMatchObject({
      code: "collar-too-short",
      at: { line: 9 },
      values: { kind: "cone", needed: "31.6 cm", size: "XL", longest: "30 cm" },
    });
  });
  it("no neck", () => {
    expect(first("neck: 36 cm, length: 20 cm, until: bandage off")).toMatchObject({
      code: "collar-no-neck-fits",
      values: { neck: "36 cm", needed: "22.6 cm" },
    });
  });
});

describe("measures that are more likely a slip of the pen", () => {
  it.each([
    ["neck: 41 cm, muzzle: 41 cm, length: 20 cm, until: bandage off", "collar-muzzle-wider"],
    ["neck: 410 cm, length: 20 cm, until: bandage off", "collar-measure-implausible"],
    ["neck: 41 mm, length: 20 cm, until: bandage off", "collar-measure-implausible"],
  ])("%s", (collar, code) => expect(told(collar)).toContain(code));
});

describe("until when", () => {
  const until = (text: string, course = changes) => told(`neck: 41 cm, length: 20 cm, until: ${text}`, { course });

  it.each([
    ["bandage of", "collar-until-unknown"],
    ["2026-02-30", "collar-until-unknown"],
    ["2026-03-02", "collar-until-past"],
    ["sutures out", "collar-until-never"],
    ["2026-03-13", "collar-off-early"],
  ])("%s: %s", (text, code) => expect(until(text)).toEqual([code]));

  it("is fine on the day the bandage can be off, or when the stitches come out", () => {
    expect(until("2026-03-14")).toEqual([]);
    expect(until("sutures out", courseOf(visit("suture-removal", "2026-03-14")))).toEqual([]);
  });

  it("may wait for what is said at a recheck, and is not too early before one", () => {
    const rechecks = courseOf(visit("recheck", "2026-03-12"));
    expect(until("recheck", rechecks)).toEqual([]);
    expect(until("2026-03-05", rechecks)).toEqual([]);
    expect(until("recheck")).toEqual(["collar-until-never"]);
  });

  it("names what the course has instead of an end that never comes", () => {
    const closed = courseOf(visit("suture-removal", "2026-03-14"), visit("recheck", "2026-03-10"));
    const never = (course: Course) => first("neck: 41 cm, length: 20 cm, until: bandage off", { course })?.values;
    expect(never(closed)).toMatchObject({ event: "bandage off", ends: ["sutures out", "recheck"] });
    expect(never(courseOf())).toMatchObject({ ends: [] });
  });

  it("does not wait for a visit that may never come", () => {
    expect(until("2026-03-13", courseOf(visit("bandage-change", "2026-03-20", "possible")))).toEqual([]);
  });
});

describe("whether it protects", () => {
  it("a ring keeps nobody from a cheek or a paw", () => {
    const care = (site: string) => ({ care: `topic: bite-wound, site: ${site}` });
    const ring = "type: ring, neck: 41 cm, length: 20 cm, until: bandage off";
    expect(run(ring, care("left cheek")).problems.map(seen)).toContain("collar-does-not-protect plan.yaml:9:17");
    expect(told(ring, care("left hind paw"))).toContain("collar-does-not-protect");
    expect(told(ring, care("left flank"))).not.toContain("collar-does-not-protect");
  });

  it("notes a band on a neck wound", () => {
    const care = "topic: bite-wound, site: neck";
    expect(told("neck: 41 cm, length: 20 cm, until: bandage off", { care })).toEqual(["collar-on-wound"]);
  });

  it("advises a collar where a topic needs one and the plan has none", () => {
    const advised = (care: string) => computeCollar(planWith([care]), changes, tables);
    expect(advised(cheek)).toMatchObject({ value: null, problems: [{ code: "collar-advised", severity: "note" }] });
    expect(advised("topic: seizure")).toEqual({ value: null, problems: [] });
  });
});

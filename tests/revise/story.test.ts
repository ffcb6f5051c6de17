import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, it } from "vitest";
import {
  compose,
  compute,
  editPlan,
  type Facts,
  type House,
  mergeVisit,
  openHouse,
  type Plan,
  readPlan,
  revise,
} from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const source = (file: string) => ({ file, bytes: new Uint8Array(readFileSync(home + file)) });
const bytes = (text: string) => new TextEncoder().encode(text);

/**
 * The story of the dog's cheek, worked by hand with the calendar of March 2026 (the 1st is a Sunday,
 * and the clinic's hours, closed on Sundays). Discharged on Monday the 2nd at 16:30.
 *
 * Amoxicillin-clavulanate, every 12 h, 14 doses from 2 March 20:00, the last on 9 March 08:00: left after the visits of the
 * 3rd (two given) 12, of the 4th 10, of the 5th 8, of the 7th at 10:00 4, of the 10th none. Carprofen, once a day at 08:00,
 * 4 doses from 3 March: 3, 2, 1, none.
 *
 * Money: 310.00 + 71.40 of medicines + 18.50 and 6.25 % of it, 1.15625, so 19.66 = 401.06 on the first day. Each change 48.00;
 * the closure came to 290.00; taking out sutures has no price. 401.06 + 5 x 48.00 + 290.00 = 931.06.
 * Paid: 150.00 + 5 x 48.00 + 290.00 = 680.00.
 *
 * next is the first day on which a visit may fall, last the last one. Until day 14 is 16 March. Closure on day 7-14 is 9-16
 * March: after the change of the 10th it may be on the 11th, a day before the next change is due. Sutures out 10-14 days after the 12th is 22-26 March, and the
 * 22nd is a Sunday: 23-26.
 */
const visits = [
  {
    at: "2026-03-03 09:30",
    visit: ["change"],
    decided: "continue",
    paid: "48.00",
    next: "2026-03-04",
    last: "2026-03-16",
    doses: [12, 3],
    earlier: 44906,
    sum: 19800,
  },
  {
    at: "2026-03-04 09:30",
    visit: ["change"],
    decided: "continue",
    paid: "48.00",
    next: "2026-03-05",
    last: "2026-03-16",
    doses: [10, 2],
    earlier: 49706,
    sum: 24600,
  },
  {
    at: "2026-03-05 09:30",
    visit: ["change"],
    decided: "stretch",
    paid: "48.00",
    next: "2026-03-07",
    last: "2026-03-16",
    doses: [8, 1],
    earlier: 54506,
    sum: 29400,
  },
  {
    at: "2026-03-07 10:00",
    visit: ["change"],
    decided: "continue",
    paid: "48.00",
    next: "2026-03-09",
    last: "2026-03-16",
    doses: [4, 0],
    earlier: 59306,
    sum: 34200,
  },
  {
    at: "2026-03-10 09:30",
    visit: ["change"],
    decided: "continue",
    paid: "48.00",
    next: "2026-03-11",
    last: "2026-03-16",
    doses: [0, 0],
    earlier: 64106,
    sum: 39000,
  },
  {
    at: "2026-03-12 09:30",
    visit: ["closure"],
    decided: "close",
    charged: "290.00",
    paid: "290.00",
    course: ["sutures out day 10-14"],
    "collar until": "sutures out",
    next: "2026-03-23",
    last: "2026-03-26",
    doses: [0, 0],
    earlier: 93106,
    sum: 68000,
  },
  {
    at: "2026-03-23 09:30",
    visit: ["sutures out"],
    decided: "stop",
    "collar until": "off",
    next: null,
    last: null,
    doses: [0, 0],
    earlier: 93106,
    sum: 68000,
  },
];

let house: House;
const plans: Plan[] = [];
const told: Facts[] = [];

beforeAll(async () => {
  const opened = openHouse(await shippedFiles()).value;
  if (!opened) throw new Error("what ships is broken");
  house = opened;
  const others = { clinic: source("clinic.yaml"), ...pricesOf() };
  let plan = source("dog-cheek-abscess/plan.yaml");
  const read = () => {
    const { value, problems } = readPlan({ plan, ...others }, { today: "2026-03-02" });
    const facts = value && compute(value, house, plans).value;
    if (!value || !facts) throw new Error(JSON.stringify([problems, value && compute(value, house, plans).problems]));
    plans.push(value);
    told.push(facts);
    return { value, facts };
  };
  let now = read();
  for (const { next, last, doses, earlier, sum, ...entered } of visits) {
    const entry = mergeVisit(null, entered).value;
    if (!entry) throw new Error(JSON.stringify(mergeVisit(null, entered).problems));
    const { value: edits, problems } = revise(now.value, now.facts, entry, house);
    if (!edits) throw new Error(JSON.stringify(problems));
    const sha256 = createHash("sha256").update(plan.bytes).digest("hex");
    const text = new TextDecoder().decode(plan.bytes);
    plan = {
      ...plan,
      bytes: bytes(editPlan(text, [...edits, { path: ["revises"], value: { plan: "plan.yaml", sha256 } }])),
    };
    now = read();
  }
});

/** The price list is a file of its own where the clinic profile names one. */
function pricesOf() {
  const [, named] = /^prices: *(\S+\.yaml)$/m.exec(readFileSync(`${home}clinic.yaml`, "utf8")) ?? [];
  return named ? { prices: source(named) } : {};
}

it("seven visits, one closure: after each, the dates, doses and money of the table", () => {
  const found = told.slice(1).map(({ course, medicines, estimate, revision }) => {
    const dosesOf = (name: string) => medicines.find(({ id }) => id === name)?.doses.length ?? 0;
    const [first] = course.visits.map(({ at, earliest }) => at?.slice(0, 10) ?? earliest).sort();
    return {
      revision,
      next: first ?? null,
      last: course.ends?.latest ?? null,
      doses: [dosesOf("amoxicillin-clavulanate"), dosesOf("carprofen")],
      earlier: estimate?.earlier,
      sum: estimate?.paid,
    };
  });
  const table = visits.map(({ next, last, doses, earlier, sum }, i) => ({
    revision: i + 1,
    next,
    last,
    doses,
    earlier,
    sum,
  }));
  expect(found).toEqual(table);
});

it("a dose keeps its number and time from paper to paper", () => {
  const all = told[0]?.medicines
    .flatMap(({ doses }) => doses)
    .map(({ medicine, number, at }) => `${medicine} ${number} ${at}`);
  for (const { medicines, discharged } of told)
    for (const { medicine, number, at } of medicines.flatMap(({ doses }) => doses)) {
      expect(at > discharged).toBe(true);
      expect(all).toContain(`${medicine} ${number} ${at}`);
    }
});

it("the paper of a revision opens with what changed, and the calendar cancels what is not to be", () => {
  const papers = told.map((facts) => compose(facts, house, { language: "es" }).value);
  expect(papers[0]?.sections[0]?.id).not.toBe("changed");
  for (const paper of papers.slice(1)) expect(paper?.sections[0]?.id).toBe("changed");
  const closed = papers[6];
  const cancelled = closed?.events.filter(({ status }) => status === "cancelled").map(({ uid }) => uid) ?? [];
  expect(cancelled.length).toBeGreaterThan(0);
  // No event that took place is cancelled, and each cancelled one was in an earlier calendar.
  const before = papers.slice(0, 6).flatMap((paper) => paper?.events.map(({ uid }) => uid) ?? []);
  for (const uid of cancelled) expect(before).toContain(uid);
  for (const { sequence } of closed?.events ?? []) expect(sequence).toBe(6);
  expect(closed?.letter.replaces.length).toBe(6);
});

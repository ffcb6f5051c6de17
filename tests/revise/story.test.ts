import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ICAL from "ical.js";
import { beforeAll, describe, expect, it } from "vitest";
import { blocksIn, linesOf, wordsOf } from "#handout/walk.js";
import {
  compose,
  compute,
  editPlan,
  type Facts,
  mergeVisit,
  type Plan,
  readPlan,
  render,
  revise,
} from "../../src/index.js";
import { house } from "../examples/examples.js";
import { visits } from "./wound.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const source = (file: string) => ({ file, bytes: new Uint8Array(readFileSync(home + file)) });
const bytes = (text: string) => new TextEncoder().encode(text);

const plans: Plan[] = [];
const told: Facts[] = [];

beforeAll(() => {
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
  for (const { entered } of visits) {
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
  const found = told.slice(1).map(({ course, collar, medicines, estimate }, i) => ({
    entered: visits[i]?.entered,
    next: course.visits.map(({ at, earliest }) => at?.slice(0, 10) ?? earliest).sort()[0] ?? null,
    last: course.ends?.latest ?? null,
    collar: collar?.until.event ?? null,
    doses: Object.fromEntries(medicines.map(({ id, doses, dispense }) => [id, [doses.length, dispense.value]])),
    money: estimate && {
      charged: estimate.before.charged,
      open: estimate.before.open.high,
      days: estimate.before.days,
      paid: estimate.paid,
      whole: [estimate.whole.low, estimate.whole.high],
    },
  }));
  expect(found).toEqual(visits);
});

it("a visit keeps its id from paper to paper, and no other ever gets it", () => {
  const booked = told
    .slice(0, 3)
    .map(({ course }) => course.visits.filter(({ at }) => at).map(({ id, at }) => [id, at]));
  const [second, third] = [
    ["bandage-change-2", "2026-03-04T09:30"],
    ["bandage-change-3", "2026-03-05T09:30"],
  ];
  expect(booked).toEqual([[["bandage-change-1", "2026-03-03T09:30"], second, third], [second, third], [third]]);
  const changes = told.map(({ course }) => course.visits.find(({ id }) => id.startsWith("bandage-change"))?.id);
  expect(changes.slice(0, 6)).toEqual([1, 2, 3, 4, 5, 6].map((number) => `bandage-change-${number}`));
  for (const { course } of told.slice(0, 6)) expect(course.visits.map(({ id }) => id)).toContain("closure-1");
});

it("states no sum that nobody gave", () => {
  const changed = told.slice(1).map((facts) => {
    const [section] = compose(facts, house, { language: "en" }).value?.sections ?? [];
    return section
      ? [...blocksIn({ sections: [section] })].flatMap(linesOf).map(wordsOf).join(" ").replaceAll("\u00a0", " ")
      : "";
  });
  expect(changed[0]).toContain(
    "Not charged yet: March 2 and March 3. For this we expect $449.06. You have paid $198.00.",
  );
  expect(changed[0]).not.toContain("came to");
  expect(changed[1]).toContain("So far we have charged $449.06. Not charged yet: March 3. For this we expect $48.00.");
  expect(changed[2]).toContain("Up to today it came to $622.56. You have paid $294.00.");
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

describe("the calendar of a revision, as ical.js reads it", () => {
  const read = async (revision: number) => {
    const handout = compose(told[revision] as Facts, house, { language: "es" }).value;
    const { value: files } = handout
      ? await render(handout, house, { paper: "letter", large: false, formats: ["ics"] })
      : { value: null };
    return new Map(
      files?.map(({ name, bytes }) => [name, new ICAL.Component(ICAL.parse(new TextDecoder().decode(bytes)))]),
    );
  };
  const eventsOf = (calendar: ICAL.Component | undefined) =>
    (calendar?.getAllSubcomponents("vevent") ?? []).map((event) => ({
      uid: String(event.getFirstPropertyValue("uid")),
      sequence: Number(event.getFirstPropertyValue("sequence")),
      status: String(event.getFirstPropertyValue("status")),
      start: String(event.getFirstPropertyValue("dtstart")),
      organizer: event.getFirstPropertyValue("organizer"),
      alarms: event.getAllSubcomponents("valarm").length,
    }));

  it("keeps the UIDs of a case that has no number of the clinic's", () => {
    const others = { clinic: source("clinic.yaml"), ...pricesOf() };
    const made = (text: string, earlier: Plan[] = []) => {
      const { value: plan } = readPlan(
        { plan: { file: "plan.yaml", bytes: bytes(text) }, ...others },
        { today: "2026-03-02" },
      );
      const facts = plan && compute(plan, house, earlier).value;
      if (!plan || !facts) throw new Error(text);
      return { text, plan, facts };
    };
    const example = new TextDecoder().decode(source("dog-cheek-abscess/plan.yaml").bytes);
    const first = made(example.replace(/^case: .*\n/m, ""));
    const entry = mergeVisit(null, visits[0]?.entered ?? {}).value;
    const edits = entry && revise(first.plan, first.facts, entry, house).value;
    const second = made(editPlan(first.text, edits ?? []), [first.plan]);
    expect(second.facts.revision).toBe(1);
    expect(second.facts.caseId).toBe(first.facts.caseId);
  });

  it("updates a visit: the same UID, a higher SEQUENCE", async () => {
    const [before, after] = [await read(2), await read(3)].map((files) => eventsOf(files.get("rechecks.ics")));
    const kept =
      after?.filter(({ uid, status }) => status !== "CANCELLED" && before?.some((one) => one.uid === uid)) ?? [];
    expect(kept.length).toBeGreaterThan(2);
    for (const event of kept) {
      const old = before?.find(({ uid }) => uid === event.uid);
      expect(event.sequence).toBeGreaterThan(old?.sequence ?? Number.POSITIVE_INFINITY);
    }
    // The wound is seen every two or three days from now on: the next visit is another day than it was.
    const moved = kept.filter(({ uid, start }) => before?.find((one) => one.uid === uid)?.start !== start);
    expect(moved.length).toBeGreaterThan(0);
  });

  // RFC 5546, 3.2.5: METHOD, ORGANIZER, UID and SEQUENCE are there, and STATUS is CANCELLED.
  it("cancels what will not be in a file of its own, METHOD:CANCEL", async () => {
    const [before, closed] = [await read(5), await read(6)];
    const planned = eventsOf(before.get("rechecks.ics")).filter(({ status }) => status !== "CANCELLED");
    const calendar = closed.get("cancelled.ics");
    expect(calendar?.getFirstPropertyValue("method")).toBe("CANCEL");
    const cancelled = eventsOf(calendar);
    const told = cancelled.filter(({ uid }) => planned.some((one) => one.uid === uid));
    expect(told.length).toBeGreaterThan(0);
    for (const event of cancelled)
      expect(event).toMatchObject({
        sequence: 6,
        status: "CANCELLED",
        organizer: "mailto:desk@juniper-row.example.org",
        alarms: 0,
      });
    // The closure took place: it is not cancelled. Every change that was still planned is.
    const changes = planned.filter(({ uid }) => uid.includes("bandage-change")).map(({ uid }) => uid);
    expect(cancelled.map(({ uid }) => uid)).toEqual(expect.arrayContaining(changes));
    expect(cancelled.some(({ uid }) => uid.includes("closure"))).toBe(false);
    expect((await read(0)).has("cancelled.ics")).toBe(false);
  });
});

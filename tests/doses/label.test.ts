/** What a label must have, against the rules of three countries (21 CFR 530.12; RCVS FAQ on cascade labels; Québec, M-8, r. 11; all read). */
import { describe, expect, test } from "vitest";
import { computeDoses } from "#compute/doses/doses.js";
import type { Plan } from "#plan/plan.js";
import { codes, example, medicines, q, type Written } from "./help.js";

const dog = example("dog-cheek-abscess");
const lacks = (plan: Partial<Plan>, country: string) =>
  computeDoses({ ...dog, ...plan, clinic: { ...dog.clinic, country } }, medicines).problems.flatMap((problem) =>
    problem.code === "label-lacks" ? [`${problem.values.context}: ${problem.values.medicines.join(", ")}`] : [],
  );

test("what is lacking is told where it would be written", () => {
  const paths = new Proxy<Plan["places"]>(
    {},
    { get: (_, path) => ({ file: String(path), line: 1, column: 1, length: 1 }) },
  );
  const [first, second] = dog.medicines;
  if (!first || !second) throw new Error("the example has two medicines");
  const told = (plan: Partial<Plan>, country: string) =>
    computeDoses({ ...dog, places: paths, ...plan, clinic: { ...dog.clinic, country } }, medicines).problems.flatMap(
      ({ code, at, values }) => (code === "label-lacks" ? [[at.file, values["context"]]] : []),
    );
  const dated = { ...first, expires: "2027-01-31" };
  expect(told({ medicines: [dated, second] }, "GB")).toEqual([
    ["owner", "owner-address"],
    ["medicines/1", "expiry"],
  ]);
  expect(told({ medicines: [first, { ...second, name: "moonflower" }] }, "US")).toEqual([
    ["medicines/1", "ingredient"],
  ]);
  expect(told({ medicines: [] }, "GB")).toEqual([]);
});

describe("what is not in the plan", () => {
  const both = "amoxicillin-clavulanate, carprofen";

  test("is told in the United States, Britain and Canada, each by its own rule", () => {
    expect(lacks({}, "US")).toEqual([]);
    expect(lacks({ clinician: undefined }, "US")).toEqual([`clinician: ${both}`]);
    expect(lacks({}, "GB")).toEqual([`owner-address: ${both}`, `expiry: ${both}`]);
    expect(lacks({}, "CA")).toEqual([`expiry: ${both}`]);
    expect(lacks({}, "FR")).toEqual([]);
  });

  test("is told no more once it is written", () => {
    const [first, second] = dog.medicines;
    if (!first || !second) throw new Error("the example has two medicines");
    const owner = { ...dog.owner, address: ["1 Elm Row"] };
    const written = { owner, medicines: [{ ...first, expires: "2027-01-31" }, second] };
    expect(lacks(written, "GB")).toEqual(["expiry: carprofen"]);
  });
});

test("a name that the table does not know may not be that of what is in it", () => {
  const [first] = dog.medicines;
  if (!first) throw new Error("the example has medicines");
  const brand = { ...first, name: "moonflower" };
  expect(lacks({ medicines: [brand, first] }, "US")).toEqual(["ingredient: moonflower"]);
});

test("a medicine may be used to its last dose", () => {
  const tablet: Written = {
    name: "x",
    tablet: q("5 mg"),
    give: q("1 tablet"),
    "last given": "08:00",
    for: q("7 days"),
  };
  expect(codes([{ ...tablet, expires: "2026-03-08" }])).toContain("expires-before-end");
  expect(codes([{ ...tablet, expires: "2026-03-09" }])).not.toContain("expires-before-end");
  const needed = { ...tablet, "as needed": "at most 2 a day" };
  expect(codes([{ ...needed, expires: "2026-03-08" }])).toContain("expires-before-end");
  expect(codes([{ ...needed, expires: "2026-03-09" }])).not.toContain("expires-before-end");
});

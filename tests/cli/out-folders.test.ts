import { join } from "node:path";
import fc from "fast-check";
import { expect, it } from "vitest";
import { outFolders } from "../../src/cli/out-folders.js";

const folders = (...plans: string[]) => plans.map((plan) => outFolders(plans).get(plan));

it("puts one plan straight into the folder", () => {
  expect(folders("a/b/plan.yaml")).toEqual([""]);
  expect(folders("rex.yaml")).toEqual([""]);
});

it("names the folder of each of several after its own place", () => {
  expect(folders("examples/dog/plan.yaml", "examples/cat/plan.yaml")).toEqual(["dog", "cat"]);
  expect(folders("rex.yaml", "mia.json")).toEqual(["rex", "mia"]);
  expect(folders("a/rex.yaml", "b/rex.yaml")).toEqual(["a/rex", "b/rex"]);
  expect(folders("plan.yaml", "dog/plan.yaml")).toEqual(["plan", "dog"]);
  expect(folders("/a/rex.yaml", "/b/rex.yaml")).toEqual(["a/rex", "b/rex"]);
});

it("keeps the whole name where a shorter one would be another's", () => {
  expect(folders("rex/plan.yaml", "rex/plan.json")).toEqual(["plan.yaml", "plan.json"]);
  expect(folders("rex.yaml", "rex/plan.yaml")).toEqual(["rex.yaml", "rex/plan.yaml"]);
  expect(folders("Rex.yaml", "rex.json")).toEqual(["Rex.yaml", "rex.json"]);
});

it("never brings two plans together, nor leaves the folder", () => {
  const part = fc.constantFrom("a", "b", "plan", "rex", "..");
  const file = fc.constantFrom("plan.yaml", "plan.json", "rex.yaml", "a.yml");
  const path = fc.tuple(fc.array(part, { maxLength: 3 }), file).map(([parts, name]) => join(...parts, name));
  fc.assert(
    fc.property(fc.uniqueArray(path, { minLength: 2, maxLength: 6 }), (plans) => {
      const found = folders(...plans).map((name) => join("out", name ?? ""));
      expect(new Set(found.map((name) => name.toLowerCase())).size).toBe(plans.length);
      for (const name of found) expect(name).toMatch(/^out\/./);
    }),
  );
});

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { readPlan } from "../../src/index.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const source = (file: string, words = (text: string) => text) => ({
  file,
  bytes: new TextEncoder().encode(words(readFileSync(home + file, "utf8"))),
});
const read = (zone: string) =>
  readPlan(
    {
      plan: source("dog-cheek-abscess/plan.yaml"),
      clinic: source("clinic.yaml", (text) => text.replace(/^time zone:.*$/m, `time zone: ${zone}`)),
      prices: source("prices.yaml"),
    },
    { today: "2026-03-02" },
  );

describe("a clinic in no time zone", () => {
  it.each(['""', "Chicago", "America/Chicgo", '"2026-03-08 02:30"', "[]"])(
    "%s is told, and nothing is reckoned",
    (zone) => {
      const { value, problems } = read(zone);
      expect(value).toBeNull();
      expect(problems.some(({ severity, at }) => severity === "stop" && at.file === "clinic.yaml")).toBe(true);
    },
  );

  it("is not one in the zone it has", () => {
    expect(read("America/Chicago").value).not.toBeNull();
  });
});

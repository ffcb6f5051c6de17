import { readFileSync } from "node:fs";
import { readPlan } from "#plan/read-plan.js";
import { computeVisits } from "../../src/compute/visits/visits.js";
import { brief, kinds } from "./help.js";

for (const f of ["dog-cheek-abscess", "cat-abscess-at-home"]) {
  const r = readPlan(
    {
      plan: { file: "plan.yaml", bytes: readFileSync(`examples/${f}/plan.yaml`) },
      clinic: { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") },
    },
    { today: "2026-03-02" },
  );
  if (!r.value) {
    console.log(r.problems);
    continue;
  }
  const c = computeVisits(r.value, kinds);
  console.log(c.value?.visits.map(brief).join("\n"), c.value?.trips, c.problems);
}

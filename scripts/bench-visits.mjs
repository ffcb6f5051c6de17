// How long courses of about 60 visits over six months take to solve, as JSON: cold is the first in a new process, warm the
// median of those that follow. cpu is processor time, which other work on the machine hardly changes. Run with: npm run bench
import { readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import { computeVisits } from "#compute/visits/visits.js";
import { readPlan } from "#plan/read-plan.js";
import { readVisitKinds } from "#tables/visits.js";

const kinds = readVisitKinds(readFileSync("shared/visits.json", "utf8"), "shared/visits.json").value;
const clinic = { file: "clinic.yaml", bytes: readFileSync("examples/clinic.yaml") };
const prices = { file: "prices.yaml", bytes: readFileSync("examples/prices.yaml") };

const courses = {
  fixed: [
    "change every day for 14 days, first tomorrow",
    "then every 2 days until day 74",
    "then weekly until day 180",
  ],
  ranges: [
    "change every day for 10-14 days, first tomorrow",
    "then every 2-3 days until day 90",
    "then every 5-7 days until day 180",
    "recheck day 90-97",
  ],
  decisions: [
    "change every day for 12-14 days, first tomorrow",
    "then every 2-3 days until day 150",
    "maybe closure day 120-150",
    "sutures out 10-14 days after closure",
    "recheck 7-10 days after the last change, not before 10:00",
  ],
};

function planOf(course) {
  const text = readFileSync("examples/dog-cheek-abscess/plan.yaml", "utf8");
  const lines = course.map((line) => `      - ${line}`).join("\n");
  const written = text
    .replace(/( {4}course:\n)( {6}- .*\n)+/, `$1${lines}\n`)
    .replace(/^booked:\n( {2}- .*\n)+/m, "unavailable: [2026-04-07, mondays 08:00-12:00]\n");
  const plan = { file: "plan.yaml", bytes: new TextEncoder().encode(written) };
  const { value, problems } = readPlan({ plan, clinic, prices }, { today: "2026-03-02" });
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

const timed = (work) => {
  const [start, before] = [performance.now(), process.cpuUsage()];
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return { result, wall: performance.now() - start, cpu: (user + system) / 1000 };
};
const round = (ms) => Math.round(ms * 10) / 10;
const runs = 21;
const median = (numbers) => round(numbers.sort((a, b) => a - b)[(runs - 1) / 2] ?? 0);

const report = Object.entries(courses).map(([name, course]) => {
  const plan = planOf(course);
  const solve = () => timed(() => computeVisits(plan, kinds));
  const cold = solve();
  const warm = Array.from({ length: runs }, solve);
  const { value, problems } = cold.result;
  return {
    course: name,
    trips: value?.trips ?? problems.map(({ code }) => code),
    wallMs: { cold: round(cold.wall), warm: median(warm.map(({ wall }) => wall)) },
    cpuMs: { cold: round(cold.cpu), warm: median(warm.map(({ cpu }) => cpu)) },
  };
});
process.stdout.write(`${JSON.stringify(report, null, 2)}\n`);

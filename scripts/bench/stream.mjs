// Builds COUNT plans one after another, all five files of each, and tells how it went as JSON: node scripts/bench/stream.mjs COUNT
import { performance } from "node:perf_hooks";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { compose, compute, openHouse, readPlan, render } from "../../dist/index.js";
import { shippedFiles } from "../../dist/io/shipped.js";
import { planOf, sourcesOf } from "./plans.mjs";

const count = Number(process.argv[2]);
const house = openHouse(await shippedFiles()).value;

async function build(n) {
  const plan = readPlan(sourcesOf(planOf(n)), { today: "2026-03-02" }).value;
  const handout = compose(compute(plan, house).value, house, { language: "en" }).value;
  const formats = ["pdf", "html", "text", "ics"];
  const { value } = await render(handout, house, { paper: "letter", large: false, formats });
  return value.reduce((sum, { bytes }) => sum + bytes.length, 0);
}

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc");
/** What is still held once all that can go is gone; the peak shows also what V8 had not yet troubled to collect. */
function held() {
  collect();
  return process.memoryUsage().heapUsed;
}

const warmUp = Math.min(15, count);
for (let n = 0; n < warmUp; n++) await build(count + n);
const heldAtFirst = held();
const [start, before] = [performance.now(), process.cpuUsage()];
let bytes = 0;
/** Memory of the process after each tenth of the plans: flat, or growing. */
const alongMB = [];
for (let n = 0; n < count; n++) {
  bytes += await build(n);
  if ((n + 1) % Math.ceil(count / 10) !== 0) continue;
  const megabytes = Math.round(process.memoryUsage().rss / 2 ** 20);
  alongMB.push(megabytes);
  process.stderr.write(`${n + 1} plans, ${megabytes} MB\n`);
}
const { user, system } = process.cpuUsage(before);
const peak = process.resourceUsage().maxRSS / 1024;
const seconds = (performance.now() - start) / 1000;
const round = (value) => Math.round(value * 10) / 10;
process.stdout.write(
  JSON.stringify({
    plans: count,
    plansASecond: round(count / seconds),
    plansACpuSecond: round(count / ((user + system) / 1e6)),
    peakMB: Math.round(peak),
    alongMB,
    heldKBAPlan: round((held() - heldAtFirst) / 1024 / count),
    bytesAPlan: Math.round(bytes / count),
  }),
);

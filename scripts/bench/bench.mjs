// Measures the tool on this machine, all in one run, as JSON on standard output: npm run bench [-- PART... --long]
// Parts: cold, warm, growth, memory, visits, peers; all of them where none is named. --long adds 10,000 plans to memory.
// Times are wall time in ms unless named otherwise, medians; compare those of one run with each other, for machines differ.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { availableParallelism, cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { compose, compute, openHouse, readPlan, render } from "../../dist/index.js";
import { shippedFiles } from "../../dist/io/shipped.js";
import { growing, planOf, sourcesOf } from "./plans.mjs";

const asked = process.argv.slice(2);
const parts = asked.filter((word) => !word.startsWith("--"));
const folder = mkdtempSync(join(tmpdir(), "hearthsheet-bench-"));
const tool = "dist/bin/hearthsheet.js";
const today = ["--today", "2026-03-02"];

const round = (ms) => Math.round(ms * 10) / 10;
const median = (numbers) => round(numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)]);

/** The median of a few runs of a command in a process of its own. */
function command(args, runs = 5, input = "") {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, args, { input, encoding: "utf8" });
    if (status !== 0) throw new Error(`${args.join(" ")}: ${stderr}`);
    return performance.now() - start;
  });
  return median(times);
}

async function timed(runs, work) {
  const times = [];
  for (let n = 0; n < runs; n++) {
    const start = performance.now();
    await work(n);
    times.push(performance.now() - start);
  }
  return median(times);
}

const formats = ["pdf", "html", "text", "ics"];
const draw = (handout, house, of = formats) => render(handout, house, { paper: "letter", large: false, formats: of });

function cold() {
  const empty = command(["-e", "0"]);
  const plan = "examples/dog-cheek-abscess/plan.yaml";
  const build = (...more) => command([tool, "build", plan, "--out", join(folder, "cold"), ...today, ...more]);
  const [fiveFiles, pdfAlone] = [build(), build("--format", "pdf")];
  const times = (ms) => round(ms / empty);
  return {
    emptyNode: empty,
    fiveFiles,
    pdfAlone,
    timesEmptyNode: { fiveFiles: times(fiveFiles), pdfAlone: times(pdfAlone) },
  };
}

async function warm(house) {
  const plan = (n) => readPlan(sourcesOf(planOf(n)), { today: "2026-03-02" }).value;
  const facts = (n) => compute(plan(n), house).value;
  const handout = (n) => compose(facts(n), house, { language: "en" }).value;
  const runs = 15;
  for (let n = 0; n < runs; n++) await draw(handout(1000 + n), house);
  const made = Array.from({ length: runs }, (_, n) => ({ plan: plan(n), facts: facts(n), handout: handout(n) }));
  const ms = {
    readPlan: await timed(runs, (n) => plan(n)),
    compute: await timed(runs, (n) => compute(made[n].plan, house)),
    compose: await timed(runs, (n) => compose(made[n].facts, house, { language: "en" })),
  };
  // A handout of its own each time: the calendar that the page carries is the file's, and made once.
  for (const format of formats) ms[format] = await timed(runs, (n) => draw({ ...made[n].handout }, house, [format]));
  const all = Object.values(ms).reduce((sum, one) => sum + one, 0);
  const shares = Object.fromEntries(
    Object.entries(ms).map(([name, one]) => [name, `${Math.round((100 * one) / all)} %`]),
  );
  const few = 30;
  const lines = Array.from({ length: few }, (_, n) => JSON.stringify({ ...planOf(n), clinic: "examples/clinic.yaml" }));
  const batch = (count, ...more) =>
    command(
      [tool, "build", "-", "--out", join(folder, `batch${more.join("")}${count}`), ...today, ...more],
      1,
      `${lines.slice(0, count).join("\n")}\n`,
    );
  // What a process needs to start and to grow warm is in both runs, and not in their difference.
  const perSecond = (...more) => round(((few - 10) * 1000) / (batch(few, ...more) - batch(10, ...more)));
  return {
    ms,
    shares,
    varied: stream(40),
    commandLine: { plansASecond: { jobs1: perSecond(), jobs2: perSecond("--jobs", "2") } },
  };
}

async function growth(house) {
  const grown = {};
  for (const [thing, sizes] of Object.entries(growing)) {
    grown[thing] = {};
    for (const [size, changes] of sizes) {
      const build = async (n) => {
        const { value: plan, problems } = readPlan(sourcesOf(planOf(n, changes)), { today: "2026-03-02" });
        const facts = plan && compute(plan, house);
        if (!facts?.value) throw new Error(JSON.stringify(facts?.problems ?? problems));
        const files = await draw(compose(facts.value, house, { language: "en" }).value, house);
        return { files: files.value, visits: facts.value.course.trips.most };
      };
      await timed(2, build);
      const { files, visits } = await build(0);
      const pdf = new TextDecoder("latin1").decode(files[0].bytes);
      const pages = pdf.match(/\/Type \/Page\b/g)?.length;
      grown[thing][size] = { ms: await timed(5, build), pages, mostVisits: visits };
    }
  }
  return grown;
}

const stream = (count) =>
  JSON.parse(execFileSync(process.execPath, ["scripts/bench/stream.mjs", String(count)], { encoding: "utf8" }));
const memory = () => [100, 1000, ...(asked.includes("--long") ? [10_000] : [])].map(stream);
const visits = () => JSON.parse(execFileSync(process.execPath, ["scripts/bench-visits.mjs"], { encoding: "utf8" }));

function peers() {
  const args = [
    tool,
    "build",
    "examples/dog-cheek-abscess/plan.yaml",
    "--language",
    "en",
    "--out",
    join(folder, "peer"),
    ...today,
  ];
  command(args, 1);
  const made = execFileSync(process.execPath, ["scripts/bench/peers/peers.mjs", join(folder, "peer")], {
    encoding: "utf8",
  });
  return JSON.parse(made);
}

const all = { cold, warm, growth, memory, visits, peers };
const house = openHouse(await shippedFiles()).value;
const report = {
  node: process.versions.node,
  processor: cpus()[0]?.model,
  cores: availableParallelism(),
  version: JSON.parse(readFileSync("package.json", "utf8")).version,
};
try {
  for (const [name, part] of Object.entries(all))
    if (parts.length === 0 || parts.includes(name)) report[name] = await part(house);
} finally {
  rmSync(folder, { recursive: true });
}
process.stdout.write(`${JSON.stringify(report, null, 2)}\n`);

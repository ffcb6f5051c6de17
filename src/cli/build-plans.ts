import { join } from "node:path";
import { languages, speaks } from "#index.js";
import { writeWhole } from "#io/write-whole.js";
import { type Settled, settle } from "#problems/settle.js";
import { type Case, readCases } from "./case.js";
import { type Desk, openDesk } from "./desk.js";
import { draw } from "./draw.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import type { BuildOptions } from "./options.js";
import { outFolders } from "./out-folders.js";
import { packageOf } from "./package.js";
import { printable } from "./printable.js";
import { report } from "./report.js";
import { count, noPlans, sum } from "./tally.js";
import { verdictLine, verdictOn } from "./verdict.js";

/** Ends the command with a message: bad usage that shows only once all that ships is known. */
type Refuse = (message: string) => never;

/** Builds the package of each plan. */
export async function buildPlans(plans: readonly string[], options: BuildOptions, refuse: Refuse): Promise<ExitCode> {
  const desk = await openDesk(options);
  refuseUnknown(options.language, desk, refuse);
  const folders = outFolders(plans);
  let tally = noPlans;
  for await (const one of readCases(plans, options.today)) {
    const folder = join(options.out, folders.get(one.name) ?? one.name.replace(/^-:/, "line-"));
    if (plans.length > 1)
      desk.terminal.progress(`${tally.ready + tally.stopped + 1}/${plans.length} ${printable(one.name)}`);
    tally = count(tally, one, await buildOne(desk, one, folder, options));
  }
  sum(desk, tally);
  return tally.code;
}

/** A language that was asked for by hand is built, or it is an error: never quietly another. */
function refuseUnknown(asked: readonly string[], { house }: Desk, refuse: Refuse): void {
  const unknown = asked.find((language) => speaks(house, language) === null);
  if (unknown === undefined) return;
  const have = languages(house).map(({ tag }) => tag);
  refuse(`error: there are no words in the language '${unknown}'. There are: ${have.join(", ")}.`);
}

async function buildOne(desk: Desk, one: Case, folder: string, options: BuildOptions): Promise<ExitCode> {
  const { format, largePrint: large = false, language, only, paper, proof, staffLanguage: staffToo } = options;
  const drawn = await draw(one, desk.house, {
    formats: format,
    large,
    languages: language,
    paper,
    document: only,
    staffToo,
    proof,
    reviews: one.reviews,
  });
  const settled = settle(drawn.problems, [...(one.plan.value?.allow ?? []), ...options.allow]);
  report(desk, one, settled);
  if (!drawn.value || settled.open.length > 0) return tell(desk, one, settled, []);

  const files = await packageOf({ ...drawn.value, texts: one.texts, reviews: one.reviews, settled }, desk.house);
  const written = await writeWhole(folder, files);
  const { open, notes } = settle(written.problems, []);
  report(desk, { ...one, texts: [] }, { open, allowed: [], notes });
  return tell(desk, one, { ...settled, open }, written.value ?? []);
}

/** Names the files written, or says why there are none. */
function tell(desk: Desk, one: Case, settled: Settled, written: readonly string[]): ExitCode {
  const { json, terminal } = desk;
  const verdict = verdictOn(settled);
  if (json) terminal.out(JSON.stringify({ plan: one.name, ...verdict, written }));
  else if (verdict.ready) for (const path of written) terminal.out(printable(path));
  else terminal.err(verdictLine(desk, one, verdict));
  return exitCodeOf(settled.open);
}

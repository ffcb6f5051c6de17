import type { Outcome } from "#index.js";
import { writeWhole } from "#io/write-whole.js";
import { type Settled, settle } from "#problems/settle.js";
import type { Case } from "./case.js";
import type { Desk } from "./desk.js";
import { draw } from "./draw.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import { type KeptBuild, keepBuild } from "./keep-build.js";
import type { BuildOptions } from "./options.js";
import { packageOf } from "./package.js";
import { printable } from "./printable.js";
import { report } from "./report.js";
import { verdictLine, verdictOn } from "./verdict.js";

/** out: where the package goes; kept: the case folder it is kept in, if it is. */
type Places = { out: string; kept: string | null };

/** Draws one plan and writes its package into a folder; says at the desk what came of it. */
export async function buildOne(desk: Desk, one: Case, places: Places, options: BuildOptions): Promise<ExitCode> {
  const { format, largePrint: large = false, language, only, paper, proof, staffLanguage: staffToo } = options;
  const drawn = await draw(one, desk.house, {
    formats: format,
    large,
    languages: language,
    paper,
    document: only,
    staffToo,
    proof,
    reviews: one.reviews.reviews,
    logo: one.logo,
  });
  const settled = settle(drawn.problems, [...(one.plan.value?.allow ?? []), ...options.allow]);
  report(desk, one, settled);
  if (!drawn.value || settled.open.length > 0) return tell(desk, one, settled, []);

  const contents = { ...drawn.value, texts: one.texts, reviews: one.reviews.reviews, settled };
  const made = await packageOf(contents, desk.house);
  const { value, problems } = await handOver(desk, { one, ...drawn.value, made, options }, places);
  const { open, notes } = settle(problems, []);
  report(desk, { ...one, texts: [] }, { open, allowed: [], notes });
  return tell(desk, one, { ...settled, open }, value ?? []);
}

async function handOver({ house }: Desk, build: KeptBuild, { out, kept }: Places): Promise<Outcome<string[]>> {
  const { files, forStaff } = build.made;
  const handOut = () => writeWhole(out, [...forStaff, ...files]);
  return kept === null ? handOut() : keepBuild(kept, house, build, handOut);
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

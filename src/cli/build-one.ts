import { writeWhole } from "#io/write-whole.js";
import { type Settled, settle } from "#problems/settle.js";
import type { Case } from "./case.js";
import type { Desk } from "./desk.js";
import { draw } from "./draw.js";
import { type ExitCode, exitCodeOf } from "./exit-code.js";
import type { BuildOptions } from "./options.js";
import { packageOf } from "./package.js";
import { printable } from "./printable.js";
import { report } from "./report.js";
import { verdictLine, verdictOn } from "./verdict.js";

/** Draws one plan and writes its package into a folder; says at the desk what came of it. */
export async function buildOne(desk: Desk, one: Case, folder: string, options: BuildOptions): Promise<ExitCode> {
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

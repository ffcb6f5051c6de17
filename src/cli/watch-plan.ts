import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { openBrowser, openPreview } from "#io/preview.js";
import { overrideFolders } from "#io/read-overrides.js";
import { readSource } from "#io/read-source.js";
import { saved } from "#io/saved.js";
import { problem } from "#problems/problem.js";
import { buildPlans } from "./build-plans.js";
import { readCase } from "./case.js";
import { openDesk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import type { BuildOptions } from "./options.js";
import { sayer } from "./say.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Builds a plan each time it, its clinic profile, its prices or what the clinic has of its own are saved, and shows the page in a browser if asked. */
export async function watchPlan(
  plan: string,
  options: BuildOptions,
  refuse: (text: string) => never,
): Promise<ExitCode> {
  const desk = await openDesk({});
  const say = sayer(desk);
  const [first] = options.language;
  const folder = options.language.length > 1 && first ? join(options.out, first) : options.out;
  const page = () => readFile(join(folder, `${options.only ?? "handout"}.html`)).catch(() => null);
  const preview = options.open ? await openPreview(page) : null;
  if (preview) {
    say(problem("watch-open", at, { url: preview.url }));
    openBrowser(preview.url);
  }
  for (;;) {
    const { texts } = await readCase(desk.house, plan, await readSource(plan), dirname(plan), 1, options.today);
    const profile = texts.find(({ is }) => is === "clinic")?.file ?? plan;
    const next = saved([
      ...new Set([plan, ...texts.map(({ file }) => file), ...(await overrideFolders(dirname(profile)))]),
    ]);
    await buildPlans([plan], options, refuse);
    preview?.changed();
    say(problem("watch-waits", at, { plan }));
    await next;
  }
}

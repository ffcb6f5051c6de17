import { Tinypool } from "tinypool";
import type { Builder, Built, Task } from "./build-task.js";
import { printable } from "./printable.js";
import { terminal } from "./terminal.js";

/** The most that one thread may hold, in MiB; a plan that wants more is broken, and ends its own thread alone. */
const mostMemory = 1024;

/** As many threads as there are jobs, each building one plan at a time. */
export function poolOf(jobs: number): { build: Builder; close: () => Promise<void> } {
  const pool = new Tinypool({
    filename: new URL("./build-worker.js", import.meta.url).href,
    minThreads: jobs,
    maxThreads: jobs,
    resourceLimits: { maxOldGenerationSizeMb: mostMemory },
  });
  const { width, seen, colour } = terminal();
  return {
    build: (task) => pool.run({ task, look: { width, seen, colour } }).catch((error: unknown) => broken(task, error)),
    close: () => pool.destroy(),
  };
}

/** A plan that broke its thread. What the error says may hold a name, and is not repeated. */
export const broken = ({ name }: Task, error: unknown): Built => ({
  name,
  code: 2,
  language: "en",
  from: "",
  skipped: false,
  said: [
    {
      to: "err",
      line: `${printable(name)}: unexpected error (${error instanceof Error ? error.name : typeof error}). Please report it.`,
    },
  ],
});

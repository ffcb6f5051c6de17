#!/usr/bin/env node
import { BrokenHouse } from "./broken-house.js";

/** A reader who has seen enough (`| head`) closes the pipe: what is left to do is still done, unheard. */
for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") process.exitCode = 2;
  });

process.on("uncaughtException", fail);
process.on("unhandledRejection", fail);

/** Loaded only now, so that a package missing from the installation is told as any other error. */
const { run } = await import("./program.js");
const code = await run(process.argv.slice(2));
process.exitCode ??= code;

/** One line, and nothing out of a plan: an error's own words may hold a name. */
function fail(error: unknown): void {
  if (error instanceof BrokenHouse) {
    process.stderr.write(
      `hearthsheet: files of its own are damaged (${error.message}).\n  = Install it again. Nothing was written.\n`,
    );
    process.exit(2);
  }
  const debug = process.env["HEARTHSHEET_DEBUG"] && error instanceof Error;
  process.stderr.write(
    debug
      ? `${error.stack}\n`
      : `hearthsheet: unexpected error (${kindOf(error)}). Please report it. HEARTHSHEET_DEBUG=1 shows where.\n`,
  );
  process.exit(2);
}

function kindOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error;
  return "code" in error ? `${error.name} ${error.code}` : error.name;
}

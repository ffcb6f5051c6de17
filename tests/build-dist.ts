import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** Compiles and bundles what the command line's tests run: once before all of them, so that none runs a file that is being written. */
export default function buildDist(): void {
  const home = fileURLToPath(new URL("..", import.meta.url));
  const tsc = fileURLToPath(new URL("../node_modules/typescript/bin/tsc", import.meta.url));
  execFileSync(process.execPath, [tsc, "-p", "tsconfig.build.json", "--noCheck", "--declaration", "false"], {
    cwd: home,
  });
  execFileSync(process.execPath, ["scripts/bundle.mjs"], { cwd: home });
}

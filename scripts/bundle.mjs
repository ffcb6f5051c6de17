// Writes dist/bin/hearthsheet.js: the command line and its libraries in a few files, which Node loads in half the time of
// the thousand they come from. What is loaded on demand stays on demand. `npm run build` runs it after the compiler.
import { cpSync, rmSync } from "node:fs";
import { rolldown } from "rolldown";

const folder = "dist/bin";
rmSync(folder, { recursive: true, force: true });
const bundle = await rolldown({
  input: { hearthsheet: "dist/cli/main.js", "build-worker": "dist/cli/build-worker.js" },
  platform: "node",
  // They find files beside their own, and stay where they lie.
  external: ["date-holidays", "tinypool"],
  logLevel: "warn",
});
await bundle.write({ dir: folder, format: "esm", chunkFileNames: "[name]-[hash].js" });
await bundle.close();
// pdfkit finds the colours of an archive beside itself.
cpSync("node_modules/pdfkit/js/data/sRGB_IEC61966_2_1.icc", `${folder}/data/sRGB_IEC61966_2_1.icc`);

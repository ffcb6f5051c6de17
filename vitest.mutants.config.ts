import { defineConfig, mergeConfig } from "vitest/config";
import usual from "./vitest.config.js";

/** The tests that hold src/compute to published and hand-worked values; those of the command line need a build, and no mutant has one. */
export default mergeConfig(
  { ...usual, test: { ...usual.test, globalSetup: [], include: [] } },
  defineConfig({
    test: { include: ["tests/doses/**/*.test.ts", "tests/costs/**/*.test.ts", "tests/visits/**/*.test.ts"] },
  }),
);

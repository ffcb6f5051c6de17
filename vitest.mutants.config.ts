import { defineConfig, mergeConfig } from "vitest/config";
import usual from "./vitest.config.js";

/** A few of the tests, for a few files: HEARTHSHEET_MUTANT_TESTS="tests/costs/money.test.ts tests/costs/lines.test.ts". */
const few = process.env["HEARTHSHEET_MUTANT_TESTS"]?.split(" ");

/** The tests that hold src/compute to published and hand-worked values; those of the command line need a build, and no mutant has one. */
export default mergeConfig(
  { ...usual, test: { ...usual.test, globalSetup: [], include: [] } },
  defineConfig({
    test: {
      isolate: false,
      include: few ?? ["tests/doses/**/*.test.ts", "tests/costs/**/*.test.ts", "tests/visits/**/*.test.ts"],
    },
  }),
);

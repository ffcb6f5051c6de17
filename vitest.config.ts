import { defineConfig } from "vitest/config";

export default defineConfig({
  ssr: { resolve: { conditions: ["source", "module", "node", "import", "default"] } },
  resolve: { conditions: ["source", "module", "node", "import", "default"] },
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: "tests/build-dist.ts",
    setupFiles: "tests/seed.ts",
    testTimeout: 120_000,
    hookTimeout: 180_000,
    maxWorkers: 2,
  },
});

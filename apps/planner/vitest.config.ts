import { defineConfig } from "vitest/config";

const conditions = ["branchwork-source", "module", "node", "import", "default"];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ["src/**/*.test.ts", "test/**/*.test.ts"],
    globalSetup: "test/built.ts",
    testTimeout: 120_000,
    hookTimeout: 180_000,
    fileParallelism: false,
  },
});

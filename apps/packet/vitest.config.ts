import { defineConfig } from "vitest/config";

const conditions = ["branchwork-source", "module", "node", "import", "default"];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: { include: ["src/**/*.test.ts", "test/**/*.test.ts"], testTimeout: 60_000, hookTimeout: 120_000 },
});

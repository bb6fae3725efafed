/** Tests run in an odd time zone, so that nothing leans on the local one. */
import { defineConfig } from "vitest/config";

process.env.TZ = "Pacific/Chatham";

export default defineConfig({
  root: import.meta.dirname,
  test: {
    include: ["**/*.test.ts", "**/*.test.tsx"],
    exclude: ["browser/**"],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});

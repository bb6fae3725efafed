/** Tests run in an odd time zone, so that nothing leans on the local one; the built program is tried as a project of its own. */
import { defineConfig } from "vitest/config";

process.env.TZ = "Pacific/Chatham";

const TESTS = ["**/*.test.ts", "**/*.test.tsx"];

export default defineConfig({
  root: import.meta.dirname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      { extends: true, test: { name: "wings", include: TESTS, exclude: ["browser/**", "cli/**"] } },
      // built once for all of them, and only where one of them runs
      {
        extends: true,
        test: { name: "terminal", include: TESTS.map((t) => `cli/${t}`), globalSetup: ["./cli/built.ts"] },
      },
    ],
  },
});

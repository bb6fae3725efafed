/** The page in a real browser: built once, served locally, driven as a user would. */
import { defineConfig } from "vitest/config";

process.env.TZ = "Pacific/Chatham";

export default defineConfig({
  root: import.meta.dirname,
  test: {
    include: ["**/*.spec.ts"],
    globalSetup: ["./served.ts"],
    testTimeout: 90_000,
    // On a busy machine a page answers late; what never comes fails all the same.
    expect: { poll: { timeout: 20_000 } },
    hookTimeout: 300_000,
    // One file at a time: they share one machine.
    fileParallelism: false,
    // They share what they import too.
    isolate: false,
  },
});

/** The page in a real browser: built once, served locally, driven as a user would. */
import { defineConfig } from "vitest/config";

process.env.TZ = "Pacific/Chatham";

export default defineConfig({
  root: import.meta.dirname,
  test: {
    include: ["**/*.spec.ts"],
    globalSetup: ["./served.ts"],
    // On a busy machine a page answers late; what never comes fails all the same.
    testTimeout: 180_000,
    expect: { poll: { timeout: 20_000 } },
    hookTimeout: 300_000,
    // Two files at a time, each in contexts of its own in the one browser.
    maxWorkers: 2,
    // They share what they import too.
    isolate: false,
  },
});

/** Tests run on all cores, in an odd time zone, so that nothing leans on the local one. Three projects, one after the other. */
import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

process.env.TZ = "Pacific/Chatham";

/** They stand in for a browser before anything of the page is imported, or keep a logbook. */
const PAGE = [
  "web/store/*.test.ts",
  "web/{kept-standards,known-flight,labels-on-the-way,row-notes,tries}.test.ts",
  "web/maker/{rework,standard}.test.ts",
];
const TERMINAL = ["cli/*.test.ts"];

export default defineConfig({
  root: import.meta.dirname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // else one core is left idle
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: "pure",
          include: ["**/*.test.ts", "**/*.test.tsx"],
          exclude: ["browser/**", ...PAGE, ...TERMINAL],
          // What they try keeps no state, so they share what they import: to import it for each file took longer than the tests.
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      { extends: true, test: { name: "page", include: PAGE, sequence: { groupOrder: 1 } } },
      {
        extends: true,
        test: {
          name: "terminal",
          include: TERMINAL,
          // Builds the program once, and only where one of them runs.
          globalSetup: ["./cli/built.ts"],
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});

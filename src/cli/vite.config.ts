/** Builds the terminal's program for Node: the command, and what runs on a core of its own. */
import { readFileSync } from "node:fs";
import { defineConfig } from "vite";
import { oneFileViewer } from "../../web/one-file/plugin.ts";

const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));

export default defineConfig({
  plugins: [oneFileViewer()],
  root: import.meta.dirname,
  define: { __HINDTRACK_VERSION__: JSON.stringify(version) },
  // packages are built in: looking each of their files up took three quarters of the start, once more for each thread.
  // tinypool starts its threads from its own files, so it stays a package
  ssr: { noExternal: true, external: ["tinypool"] },
  build: {
    ssr: true,
    rolldownOptions: {
      input: { hindtrack: "hindtrack.ts", "habits-worker": "habits-worker.ts" },
      // all in one folder: both look beside themselves for what else was built
      output: { chunkFileNames: "shared.js" },
    },
    outDir: "../../dist/cli",
    emptyOutDir: true,
    target: "node20",
  },
});

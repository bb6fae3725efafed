/** Builds the terminal's one file for Node. */
import { readFileSync } from "node:fs";
import { defineConfig } from "vite";
import { oneFileViewer } from "../../web/one-file/plugin.ts";

const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));

export default defineConfig({
  plugins: [oneFileViewer()],
  root: import.meta.dirname,
  define: { __HINDTRACK_VERSION__: JSON.stringify(version) },
  build: {
    ssr: "hindtrack.ts",
    outDir: "../../dist/cli",
    emptyOutDir: true,
    target: "node20",
  },
});

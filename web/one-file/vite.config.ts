/** How the viewer is built: scripts and styles inside the page itself. */
import { preact } from "@preact/preset-vite";
import { defineConfig } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";

export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  plugins: [preact(), viteSingleFile()],
  build: {
    outDir: "../../dist/one-file",
    modulePreload: { polyfill: false },
    rolldownOptions: {
      checks: { pluginTimings: false },
      treeshake: { moduleSideEffects: (id) => !/[\\/]src[\\/]/.test(id) },
    },
  },
});

/** How the page is built: one folder of files that asks nobody but its own server. */
import { preact } from "@preact/preset-vite";
import { defineConfig } from "vite";
import { keptOffline } from "./offline/plugin.ts";
import { oneFileViewer } from "./one-file/plugin.ts";
import { HEADERS, POLICY, POLICY_WHILE_WRITING } from "./policy.ts";

export default defineConfig(({ command }) => ({
  root: import.meta.dirname,
  base: "./",
  plugins: [
    preact(),
    oneFileViewer(),
    keptOffline(),
    {
      name: "hindtrack-policy",
      transformIndexHtml: (html) =>
        html.replace("%POLICY%", command === "build" ? POLICY : POLICY_WHILE_WRITING),
    },
  ],
  build: {
    outDir: "../dist/web",
    emptyOutDir: true,
    // No file becomes a data address: the policy lets nothing be fetched from one.
    assetsInlineLimit: 0,
    // It comes from this machine, and is kept for the next time: the analysis may be one file. kB.
    chunkSizeWarningLimit: 1500,
    modulePreload: { polyfill: false },
    // The page takes words and types from the door; the analysis itself goes to the worker alone.
    rolldownOptions: {
      checks: { pluginTimings: false },
      treeshake: { moduleSideEffects: (id) => !/[\\/]src[\\/]/.test(id) },
    },
  },
  worker: { format: "es" },
  server: { host: "127.0.0.1", fs: { allow: [".."] } },
  preview: { host: "127.0.0.1", port: Number(process.env.PORT) || 4173, headers: HEADERS },
}));

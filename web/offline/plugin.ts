/** Builds the keeper of the page, which knows every file that was built and is new whenever one of them is. */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "vite";

const input = fileURLToPath(new URL("./service-worker.ts", import.meta.url));
const SERVICE_WORKER = "service-worker.js";

async function built(files: readonly string[], version: string): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: "error",
    define: { FILES: JSON.stringify(files), VERSION: JSON.stringify(version) },
    build: {
      write: false,
      rolldownOptions: { input, output: { format: "iife", entryFileNames: SERVICE_WORKER } },
      modulePreload: { polyfill: false },
    },
  });
  const [first] = Array.isArray(result) ? result : [result];
  const chunk = "output" in first! ? first.output[0] : null;
  if (chunk?.type !== "chunk") throw new Error("the keeper of the page was not built");
  return chunk.code;
}

export const keptOffline = (): Plugin => ({
  name: "hindtrack-offline",
  apply: "build",
  generateBundle: {
    order: "post",
    async handler(_, bundle) {
      const hash = createHash("sha256");
      const names = Object.keys(bundle).sort();
      for (const name of names) {
        const file = bundle[name]!;
        hash.update(name).update(file.type === "chunk" ? file.code : file.source);
      }
      // The page is asked for by its folder.
      const files = names.map((name) => (name === "index.html" ? "./" : `./${name}`));
      const source = await built(files, hash.digest("hex").slice(0, 16));
      this.emitFile({ type: "asset", fileName: SERVICE_WORKER, source });
    },
  },
});

/** Builds the viewer beside the page or the command that fills it. */
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "vite";

const configFile = fileURLToPath(new URL("./vite.config.ts", import.meta.url));

/** Emits `one-file.html`: a page with a place for a flight. */
export const oneFileViewer = (): Plugin => ({
  name: "hindtrack-one-file",
  apply: "build",
  async generateBundle() {
    const result = await build({ configFile, logLevel: "error", build: { write: false } });
    const [built] = Array.isArray(result) ? result : [result];
    const page = "output" in built! ? built.output.find((file) => file.fileName.endsWith(".html")) : null;
    if (page?.type !== "asset") throw new Error("the viewer was not built");
    this.emitFile({ type: "asset", fileName: "one-file.html", source: page.source });
  },
});

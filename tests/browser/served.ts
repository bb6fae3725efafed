/** Builds the page once and serves it on a free port of this machine for all browser tests. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, preview } from "vite";
import type { TestProject } from "vitest/node";

const configFile = fileURLToPath(new URL("../../web/vite.config.ts", import.meta.url));

declare module "vitest" {
  export interface ProvidedContext {
    address: string;
    /** The folder of the built page. */
    built: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const outDir = mkdtempSync(join(tmpdir(), "hindtrack-web-"));
  const options = { configFile, logLevel: "warn", build: { outDir }, preview: { port: 0 } } as const;
  await build(options);
  const server = await preview(options);
  project.provide("built", outDir);
  project.provide("address", server.resolvedUrls!.local[0]!);
  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}

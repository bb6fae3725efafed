/** Builds the page once, serves it on a free port of this machine, and starts one browser: for all browser tests. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { build, preview } from "vite";
import type { TestProject } from "vitest/node";
import { chromiumPath, LAUNCH_ARGUMENTS } from "./chromium.ts";

const configFile = fileURLToPath(new URL("../../web/vite.config.ts", import.meta.url));

declare module "vitest" {
  export interface ProvidedContext {
    address: string;
    /** The folder of the built page. */
    built: string;
    /** A folder that goes when the tests have run. */
    scratch: string;
    /** Where the browser listens. */
    browser: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const scratch = mkdtempSync(join(tmpdir(), "hindtrack-web-"));
  const outDir = join(scratch, "built");
  const options = { configFile, logLevel: "warn", build: { outDir }, preview: { port: 0 } } as const;
  await build(options);
  const server = await preview(options);
  const browser = await chromium.launchServer({ executablePath: chromiumPath(), args: LAUNCH_ARGUMENTS });
  project.provide("built", outDir);
  project.provide("scratch", scratch);
  project.provide("browser", browser.wsEndpoint());
  project.provide("address", server.resolvedUrls!.local[0]!);
  return async () => {
    await browser.close();
    await server.close();
    rmSync(scratch, { recursive: true, force: true });
  };
}

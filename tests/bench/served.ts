/** The page as it is built, served on this machine, and a real Chromium: for the benches that use them. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { build, preview } from "vite";
import { chromiumPath, LAUNCH_ARGUMENTS } from "../browser/chromium.ts";
import type { Line } from "./time.ts";

const configFile = fileURLToPath(new URL("../../web/vite.config.ts", import.meta.url));

export async function served(
  measure: (browser: Browser, address: string) => Promise<Line[]>,
): Promise<Line[]> {
  const outDir = mkdtempSync(join(tmpdir(), "hindtrack-bench-"));
  const options = { configFile, logLevel: "error", build: { outDir }, preview: { port: 0 } } as const;
  await build(options);
  const server = await preview(options);
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: LAUNCH_ARGUMENTS });
  try {
    return await measure(browser, server.resolvedUrls!.local[0]!);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}

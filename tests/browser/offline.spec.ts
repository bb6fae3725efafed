/** The page once loaded works with its server gone, and a newer one is taken cleanly. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { type PreviewServer, preview } from "vite";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { launch, openSample, saved, sheetStands, watchedPage } from "./page.ts";

const configFile = fileURLToPath(new URL("../../web/vite.config.ts", import.meta.url));

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), "hindtrack-offline-"));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A server of its own for each test, as `npm start` runs it, over a copy of the built page. */
async function served(name: string): Promise<{ server: PreviewServer; outDir: string; address: string }> {
  const outDir = join(folder, name);
  cpSync(inject("built"), outDir, { recursive: true });
  const server = await preview({ configFile, logLevel: "error", build: { outDir }, preview: { port: 0 } });
  return { server, outDir, address: server.resolvedUrls!.local[0]! };
}

const isKept = (page: Page) =>
  expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), { timeout: 30_000 })
    .toBe("activated");

test("with the server gone the page opens, shows the flight it had, and opens another", async () => {
  const { server, address } = await served("gone");
  const { page, trouble, elsewhere, close } = await watchedPage(browser, {}, address);
  await openSample(page, "Calm and tidy");
  const title = await page.locator("h1").textContent();
  await isKept(page);
  await server.close();
  await page.reload();
  await sheetStands(page);
  expect(await page.locator("h1").textContent()).toBe(title);
  await page.getByRole("link", { name: "Logbook", exact: true }).click();
  await openSample(page, "A hold by distance");
  expect(await page.locator(".ex").count()).toBeGreaterThan(0);
  expect((await saved(page, "one page that opens anywhere")).name).toMatch(/\.html$/);
  expect(elsewhere).toEqual([]);
  expect(trouble.filter((text) => !/ERR_CONNECTION_REFUSED|Failed to load resource/.test(text))).toEqual([]);
  await close();
});

/** Another version: one file differs, and so does the keeper's name for the whole. */
function anotherVersion(outDir: string): void {
  const page = readFileSync(join(outDir, "index.html"), "utf8");
  writeFileSync(join(outDir, "index.html"), page.replace("<title>Hindtrack", "<title>Hindtrack renewed"));
  const keeper = readFileSync(join(outDir, "service-worker.js"), "utf8");
  const next = keeper.replace(/[0-9a-f]{16}/, "0123456789abcdef");
  expect(next).not.toBe(keeper);
  writeFileSync(join(outDir, "service-worker.js"), next);
}

test("a newer version is told plainly and taken by one click; another tab is told too, and nothing is lost", async () => {
  const { server, outDir, address } = await served("newer");
  const { page, trouble, close } = await watchedPage(browser, {}, address);
  await isKept(page);
  await page.reload(); // now the keeper serves it
  await openSample(page, "Calm and tidy");
  const other = await page.context().newPage();
  await other.goto(address);
  await other.waitForSelector("h1");
  anotherVersion(outDir);
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  const take = page.getByRole("button", { name: "Take it now" });
  await take.waitFor();
  expect(await page.title()).toBe("Hindtrack");
  await take.click();
  await page.waitForFunction(() => document.title === "Hindtrack renewed");
  await sheetStands(page);
  expect(await take.count()).toBe(0);
  await other.getByRole("button", { name: "Reload this one" }).click();
  await other.waitForFunction(() => document.title === "Hindtrack renewed");
  // Of the old version nothing is left.
  expect(await page.evaluate(() => caches.keys())).toEqual(["hindtrack 0123456789abcdef"]);
  await server.close();
  await page.reload();
  await sheetStands(page);
  expect(await page.title()).toBe("Hindtrack renewed");
  expect(trouble.filter((text) => !/ERR_CONNECTION_REFUSED|Failed to load resource/.test(text))).toEqual([]);
  await close();
});

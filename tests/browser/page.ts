/** A page under watch: every request, console error and broken policy is remembered. */
import { mkdtempSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject } from "vitest";

/** The one browser of all tests; closing it closes only what was opened here. */
export const launch = (): Promise<Browser> => chromium.connect(inject("browser"));

export interface Watched {
  readonly page: Page;
  /** Addresses asked for that are not on the local server. */
  readonly elsewhere: string[];
  /** All addresses asked for. */
  readonly asked: string[];
  /** Console errors and warnings, uncaught errors, broken policies. */
  readonly trouble: string[];
  readonly close: () => Promise<void>;
}

/** How long a page is waited for, ms: it may share its machine with another, and with other work. */
const PATIENCE = 60_000;
const LOCAL = /^(data|blob):/;

export async function watchedPage(
  browser: Browser,
  options: BrowserContextOptions = {},
  address = inject("address"),
  /** Runs in the page before anything of it. */
  before: (() => void) | null = null,
): Promise<Watched> {
  const context = await browser.newContext({ locale: "en-GB", ...options });
  context.setDefaultTimeout(PATIENCE);
  const [elsewhere, asked, trouble]: string[][] = [[], [], []];
  context.on("request", (request) => {
    asked.push(request.url());
    if (!request.url().startsWith(address) && !LOCAL.test(request.url())) elsewhere.push(request.url());
  });
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) trouble.push(message.text());
  });
  context.on("weberror", (error) => trouble.push(String(error.error().stack)));
  if (before) await context.addInitScript(before);
  const page = await context.newPage();
  await page.exposeFunction("hindtrackTrouble", (text: string) => trouble.push(text));
  await page.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => {
      const tell = (window as unknown as { hindtrackTrouble: (text: string) => void }).hindtrackTrouble;
      tell(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  await page.goto(address);
  await page.waitForSelector("h1");
  return { page, elsewhere, asked, trouble, close: () => context.close() };
}

/** What a button saves: under which name, and where it lies now. */
export async function saved(
  page: Page,
  button: string,
): Promise<{ name: string; path: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  const path = join(mkdtempSync(join(inject("scratch"), "saved-")), "saved.html");
  await download.saveAs(path);
  return { name: download.suggestedFilename(), path, text: readFileSync(path, "utf8") };
}

/** Work on a page that asks nothing of the network and complains of nothing. */
export async function onPage(
  browser: Browser,
  work: (watched: Watched) => Promise<void>,
  options: BrowserContextOptions = {},
): Promise<void> {
  const watched = await watchedPage(browser, options);
  try {
    await work(watched);
    expect(watched.elsewhere, "requests that left the local server").toEqual([]);
    expect(watched.trouble, "console errors and broken policies").toEqual([]);
  } finally {
    await watched.close();
  }
}

/** One browser for the tests of a file, and what works on a page of it as `onPage` does. */
export function pagesOfOneBrowser() {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());
  return (work: (watched: Watched) => Promise<void>, options: BrowserContextOptions = {}) =>
    onPage(browser, work, options);
}

export interface Given {
  readonly name: string;
  readonly text: string;
}

const samples = new URL("../../samples/", import.meta.url);
export const sampleFile = (name: string, file: string): string =>
  readFileSync(fileURLToPath(new URL(`${name}/${file}`, samples)), "utf8");

/** Drops files on the page as a hand would: a drop event that carries them. */
export async function drop(page: Page, files: readonly Given[]): Promise<void> {
  const carried = await page.evaluateHandle((given) => {
    const transfer = new DataTransfer();
    for (const { name, text } of given) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.dispatchEvent(".drop, .head", "drop", { dataTransfer: carried });
}

/** Waits until the whole sheet is up: its parts come one after the other. */
export async function sheetStands(page: Page): Promise<void> {
  await page.waitForSelector('main[aria-busy="false"] .head h1');
}

export const openSample = async (page: Page, title: string): Promise<void> => {
  // Behind a fold once the logbook holds flights.
  const fold = page.locator("summary", { hasText: "made up" });
  const sample = page.getByRole("button", { name: title });
  await fold.or(sample).first().waitFor();
  for (let tries = 0; ; tries++) {
    if ((await fold.isVisible()) && !(await sample.isVisible())) await fold.click();
    try {
      await sample.click({ timeout: 3000 });
      break;
    } catch (error) {
      // the flights of the logbook have come meanwhile, and with them the fold
      if (tries === 3) throw error;
    }
  }
  await sheetStands(page);
};

/** Nothing of the logbook is lost: tabs that die, another browser, a store that is closed or full. */
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { addMany, allStand, anotherTab, dropPadded, kill, MANY, rows, said } from "./logbook.ts";
import { drop, launch, openSample, saved, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test("the tab dies while flights are added: all are there afterwards, and worked out", async () => {
  const watched = await watchedPage(browser);
  await drop(watched.page, MANY);
  await watched.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("of 4"),
  );
  await anotherTab(watched); // it must not take the work from the first
  await kill(watched.page);
  await allStand(await anotherTab(watched), 4);
  await watched.close();
});

test("the tab dies while a log is read: the flight is on the sheet when the page opens again", async () => {
  const watched = await watchedPage(browser);
  await dropPadded(watched.page, { name: "long.gpx", text: MANY[0]!.text }, 40_000_000);
  await watched.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("Reading"),
  );
  await kill(watched.page);
  const blank = await watched.page.context().newPage();
  await blank.goto(inject("address"));
  await sheetStands(blank);
  expect(await blank.locator("#log").textContent()).toContain("long.gpx");
  await watched.close();
});

test("the tab dies right after a word was written and a name given: both stand", async () => {
  const watched = await watchedPage(browser);
  const { page } = watched;
  await openSample(page, "Calm and tidy");
  await page.getByRole("region", { name: "In the logbook" }).getByLabel("Pilot").fill("A. N.");
  await page.keyboard.press("Tab");
  const address = page.url();
  await page.getByRole("textbox", { name: "Remarks", exact: true }).pressSequentially("Held");
  await kill(page);
  const blank = await page.context().newPage();
  await blank.goto(address);
  await sheetStands(blank);
  expect(await blank.getByRole("textbox", { name: "Remarks", exact: true }).inputValue()).toBe("Held");
  const pilot = blank.getByRole("region", { name: "In the logbook" }).getByLabel("Pilot");
  await expect.poll(() => pilot.inputValue(), { timeout: 10_000 }).toBe("A. N.");
  await watched.close();
});

const takeIn = (page: Page, buffer: Buffer) =>
  page
    .getByLabel("Logs and briefs")
    .setInputFiles({ name: "logbook.zip", mimeType: "application/zip", buffer });

test("the logbook as one file goes into another browser; the tab dies on the way, and all is there afterwards", async () => {
  const first = await watchedPage(browser);
  await addMany(first.page);
  await allStand(first.page, 4);
  const archive = readFileSync((await saved(first.page, "Save the logbook as one file")).path);
  const list = await rows(first.page).allTextContents();
  expect(first.trouble).toEqual([]);
  await first.close();
  const second = await watchedPage(browser);
  await takeIn(second.page, archive);
  await second.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("Taking in"),
  );
  await kill(second.page);
  const blank = await anotherTab(second);
  await allStand(blank, 4);
  expect(await rows(blank).allTextContents()).toEqual(list);
  await takeIn(blank, archive);
  await said(blank, /logbook\.zip: 0 flights added, 4 stood here already/);
  await second.close();
});

test("a browser that keeps nothing: said plainly, and the sheet stands all the same", async () => {
  const watched = await watchedPage(browser, {}, undefined, () => {
    Object.defineProperty(window, "indexedDB", { get: () => undefined });
  });
  await openSample(watched.page, "Calm and tidy");
  expect(await watched.page.getByRole("alert").textContent()).toContain("This browser keeps nothing");
  expect(watched.trouble).toEqual([]);
  await watched.close();
});

test("the space is full: said plainly, the sheet stands, and the flights before it are safe", async () => {
  const watched = await watchedPage(browser);
  const { page } = watched;
  const session = await page.context().newCDPSession(page);
  const origin = new URL(page.url()).origin;
  // Room for the page itself and some flights.
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 15_000_000 });
  await openSample(page, "Calm and tidy");
  await dropPadded(page, MANY[2]!, 20_000_000);
  await page.waitForFunction(() => document.querySelector("h1")?.textContent?.includes("crosswind"));
  expect(await page.getByRole("alert").textContent()).toContain("is full: the last change was not kept");
  await page.getByRole("link", { name: "Logbook", exact: true }).click();
  await allStand(page, 1);
  await page.reload();
  await allStand(page, 1);
  expect(watched.trouble).toEqual([]);
  await watched.close();
});

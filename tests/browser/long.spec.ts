/** A log of 100,000 points: progress is shown, the page answers all the while, and reading can be cancelled. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { dropLog, makeLog, watched } from "../support/long-reading.ts";
import { drop, launch, openSample, sampleFile, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test("100,000 points: progress is shown, and all of them are used", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await makeLog(page);
  await dropLog(page);
  await sheetStands(page);
  const { shares } = await watched(page);
  expect(await page.locator(".head .what").textContent()).toContain("100,000 of 100,000 points used");
  expect(await page.locator(".ex .course-figure canvas").count()).toBeGreaterThan(20);
  expect(shares.length).toBeGreaterThanOrEqual(4);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(trouble).toEqual([]);
  await close();
});

test("reading is cancelled half-way: the sheet, its notices and its remark stand as before, and after a reload", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await drop(page, [
    { name: "log.gpx", text: sampleFile("calm-and-tidy", "log.gpx") },
    { name: "brief.yaml", text: sampleFile("calm-and-tidy", "brief.yaml") },
    { name: "other.yaml", text: sampleFile("needle-chased", "brief.yaml") },
  ]);
  await sheetStands(page);
  await page.getByRole("textbox", { name: "Remarks" }).fill("Held well.");
  const stands = async () => ({
    title: await page.locator("h1").textContent(),
    exercises: await page.locator(".ex").count(),
    remark: await page.getByRole("textbox", { name: "Remarks" }).inputValue(),
  });
  const before = await stands();
  const said = await page.getByRole("alert").textContent();
  expect(said).toContain("other.yaml");
  await makeLog(page);
  await dropLog(page);
  await page.waitForFunction(() => Number(document.querySelector("progress")?.getAttribute("value")) > 0.1);
  await page.getByRole("button", { name: "Cancel" }).click();
  expect(await page.locator(".underway").textContent()).toBe("");
  await page.waitForTimeout(1500);
  expect(await stands()).toEqual(before);
  expect(await page.getByRole("alert").textContent()).toBe(said);
  await page.reload();
  await sheetStands(page);
  expect(await stands()).toEqual(before);
  // And what was cancelled can be opened after all.
  await makeLog(page);
  await dropLog(page);
  await page.waitForFunction(() => document.querySelector("h1")?.textContent === "Long");
  expect(trouble).toEqual([]);
  await close();
});

test("reading is cancelled half-way where nothing was open: files can be opened as before", async () => {
  const { page, close } = await watchedPage(browser);
  await makeLog(page);
  await dropLog(page);
  await page.waitForFunction(() => Number(document.querySelector("progress")?.getAttribute("value")) > 0.1);
  await page.getByRole("button", { name: "Cancel" }).click();
  expect(await page.locator("h1").textContent()).toMatch(/^Hindtrack reads/);
  await openSample(page, "Calm and tidy");
  await close();
});

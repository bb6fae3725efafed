/** What the exercises are held against is chosen on the sheet, or given as the school's own file. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drop, launch, openSample, sampleFile, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

const SCHOOL = `standard: 1
id: valley-school
title: Valley school, instrument phase
citation: Training order 7, 3.2
course: { needle: 0.2, altitude_ft: 80 }
`;
const SAMPLE = "A strong crosswind";

const needle = (page: Page) => page.locator("#exercise-1 .verdicts tbody tr").first();
const limit = (page: Page) => needle(page).locator("td").nth(1).textContent();
const against = (page: Page) => page.getByLabel("Held against");

/** The sheet is made anew after a choice: waits until it says so. */
async function until(page: Page, words: string): Promise<void> {
  await page.waitForFunction((w) => document.querySelector(".head .what")?.textContent?.includes(w), words);
  await sheetStands(page);
}

test("the school's own file, dropped on a sheet, is what its exercises are held against, and stays so after a reload", async () => {
  const { page, trouble, elsewhere, close } = await watchedPage(browser);
  await openSample(page, SAMPLE);
  expect(await limit(page)).toBe("0.75");
  await drop(page, [{ name: "valley.yaml", text: SCHOOL }]);
  await until(page, "Valley school");
  expect(await limit(page)).toBe("0.20");
  expect(await needle(page).textContent()).toContain("not met");
  expect(await needle(page).textContent()).toContain("Training order 7, 3.2");
  await page.waitForTimeout(300);
  await page.reload();
  await until(page, "Valley school");
  expect(await limit(page)).toBe("0.20");
  await against(page).selectOption({ label: "European instrument rating" });
  await until(page, "European instrument rating");
  expect(await limit(page)).toBe("0.50");
  await against(page).selectOption({ value: "" });
  await until(page, "Valley school");
  expect([trouble, elsewhere]).toEqual([[], []]);
  await close();
});

test("a fault in the school's file is told with its place, and the sheet stays; nothing may be chosen: then there are no verdicts", async () => {
  const { page, close } = await watchedPage(browser);
  await openSample(page, SAMPLE);
  await drop(page, [{ name: "valley.yaml", text: SCHOOL.replace("needle", "neddle") }]);
  const said = page.getByRole("alert");
  await page.waitForFunction(() => document.querySelector("[role=alert]")?.textContent !== "");
  expect(await said.textContent()).toMatch(/valley\.yaml.*line 5.*neddle/);
  expect(await limit(page)).toBe("0.75");
  await against(page).selectOption("none");
  await page.waitForFunction(() => document.querySelectorAll(".verdicts").length === 0);
  await sheetStands(page);
  expect(await page.locator(".lineup .v").count()).toBe(0);
  await close();
});

test("dropped on the logbook alone a standard is one, kept for every flight: chosen on a sheet, made the usual one, and taken away", async () => {
  const { page, trouble, elsewhere, close } = await watchedPage(browser);
  await drop(page, [{ name: "valley.yaml", text: SCHOOL }]);
  await page.getByText(/valley\.yaml is a standard, Valley school, instrument phase\. It is kept/).waitFor();
  expect(await page.getByRole("alert").textContent()).not.toMatch(/brief alone|no log/i);
  await openSample(page, SAMPLE);
  expect(await limit(page), "the brief names another one").toBe("0.75");
  await against(page).selectOption({ label: "Valley school, instrument phase" });
  await until(page, "Valley school");
  expect(await limit(page)).toBe("0.20");
  await page.getByRole("button", { name: "Make it the usual one" }).click();
  await page.getByRole("button", { name: "No longer the usual one" }).waitFor();
  // a flight whose brief names none
  const brief = sampleFile("calm-and-tidy", "brief.yaml").replace(/^standard:.*\n/m, "");
  await drop(page, [
    { name: "calm.gpx", text: sampleFile("calm-and-tidy", "log.gpx") },
    { name: "calm.yaml", text: brief },
  ]);
  await page.waitForFunction(() => document.querySelector("h1")?.textContent?.includes("light wind"));
  await until(page, "Valley school");
  expect(await against(page).locator("option").first().textContent()).toBe(
    "Valley school, instrument phase (the usual one)",
  );
  await page.reload();
  await until(page, "Valley school");
  await page.getByRole("button", { name: "Remove the standard Valley school" }).click();
  await page.waitForFunction(() => document.querySelectorAll(".verdicts").length === 0);
  expect(await against(page).locator("option").first().textContent()).toBe("none: the brief names none");
  expect([trouble, elsewhere]).toEqual([[], []]);
  await close();
});

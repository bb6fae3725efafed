/** What the instructor writes: remarks and verdicts of their own, kept over a reload, printed, and in all that is saved. */
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, openSample, saved, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

const REMARK = "Look at A: the track was off long before the needle.";
const WHY = "prompted; the lesson was the intercept";

async function writeOn(page: Page): Promise<void> {
  const exercise = page.locator("#exercise-2");
  await exercise.getByRole("textbox", { name: "Remark on" }).fill(REMARK);
  await exercise.locator("summary", { hasText: "Overrule a verdict" }).click();
  await exercise.getByLabel("Your verdict").selectOption("not met");
  await exercise.getByLabel("Who").fill("A. N.");
  await exercise.getByLabel("Why").fill(WHY);
  await exercise.getByRole("button", { name: "Overrule" }).click();
}

const first = (page: Page) => page.locator("#exercise-2 .verdicts tbody tr").first();

async function stands(page: Page): Promise<void> {
  expect(await first(page).locator(".mark").textContent()).toMatch(/met\s*not met\s*instructor’s/);
  expect(await first(page).locator(".cite").textContent()).toContain(
    `The instructor, A. N.: not met; ${WHY}.`,
  );
  expect(await page.locator("#exercise-2 > .no").textContent()).toMatch(/not met\s*instructor’s/);
  expect(await page.locator("#exercise-2 .remark textarea").inputValue()).toBe(REMARK);
}

test("a remark and an overruled verdict survive a reload, stand beside what was computed, and can be withdrawn", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await openSample(page, "A strong crosswind");
  await writeOn(page);
  await stands(page);
  await page.reload();
  await sheetStands(page);
  await stands(page);
  await page.locator("#exercise-2 summary", { hasText: "Overrule a verdict" }).click();
  await page.locator("#exercise-2").getByRole("button", { name: "Withdraw it" }).click();
  expect(await first(page).locator(".mark").textContent()).not.toContain("instructor");
  await page.reload();
  await sheetStands(page);
  expect(await first(page).locator(".mark").textContent()).not.toContain("instructor");
  expect(await page.locator("#exercise-2 .remark textarea").inputValue()).toBe(REMARK);
  expect(trouble).toEqual([]);
  await close();
});

test("a sheet that is left for the logbook comes up again with what was written on it, and keeps it", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await openSample(page, "A strong crosswind");
  await writeOn(page);
  for (const by of ["Sheet", "flight"]) {
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    if (by === "Sheet") await page.getByRole("link", { name: "Sheet", exact: true }).click();
    else await page.locator(".flights tbody a").first().click();
    await sheetStands(page);
    await stands(page);
  }
  const remarks = page.getByRole("textbox", { name: "Remarks" });
  await remarks.fill("Flight well prepared.");
  await page.getByRole("link", { name: "Logbook", exact: true }).click();
  await page.getByRole("link", { name: "Sheet", exact: true }).click();
  await sheetStands(page);
  await page.getByRole("textbox", { name: "Remarks" }).pressSequentially(" And flown.");
  await page.reload();
  await sheetStands(page);
  await stands(page);
  expect(await page.getByRole("textbox", { name: "Remarks" }).inputValue()).toContain(" And flown.");
  expect(await page.getByRole("textbox", { name: "Remarks" }).inputValue()).toContain(
    "Flight well prepared.",
  );
  expect(trouble).toEqual([]);
  await close();
});

test("they are in the document, in the tables, on paper, and in the page that opens anywhere", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await openSample(page, "A strong crosswind");
  await writeOn(page);
  await page.getByRole("combobox", { name: "Pilot" }).fill("N. N.");
  await page.getByRole("combobox", { name: "Aircraft" }).fill("N123");
  await page.keyboard.press("Tab");
  await page
    .locator(".entry-paper", { hasText: "Pilot N. N., aircraft N123" })
    .waitFor({ state: "attached" });
  const document = JSON.parse((await saved(page, "document (JSON)")).text);
  const { title, verdicts } = document.exercises[1];
  expect(document.flownBy).toEqual({ pilot: "N. N.", aircraft: "N123" });
  expect(document.remarks).toEqual([{ exercise: 1, title, text: REMARK }]);
  const overrule = { exercise: 1, title, criterion: "course-needle", verdict: "not met" };
  expect(document.overrules).toEqual([{ ...overrule, by: "A. N.", why: WHY }]);
  expect(verdicts[0].verdict).toBe("met");
  for (const table of ["verdicts (CSV)", "exercises (CSV)"])
    expect((await saved(page, table)).text).toMatch(/^pilot,aircraft,.*\r?\nN\. N\.,N123,/);
  expect((await saved(page, "verdicts (CSV)")).text).toContain(`,not met,A. N.,${WHY}`);
  expect((await saved(page, "exercises (CSV)")).text).toContain(REMARK);
  const { path } = await saved(page, "one page that opens anywhere");
  await page.emulateMedia({ media: "print" });
  expect(await page.locator("#exercise-2 .remark .paper").textContent()).toBe(REMARK);
  expect(await page.locator("#exercise-1 .remark").isVisible(), "no empty remark on paper").toBe(false);
  expect(await page.locator(".overruling").first().isVisible()).toBe(false);
  expect(trouble).toEqual([]);
  await close();

  const context = await browser.newContext({ locale: "en-GB", offline: true });
  const alone = await context.newPage();
  await alone.goto(pathToFileURL(path).href);
  await alone.waitForSelector(".sign");
  await stands(alone);
  expect(await alone.locator(".head .what").textContent()).toContain("Pilot N. N., aircraft N123");
  await context.close();
});

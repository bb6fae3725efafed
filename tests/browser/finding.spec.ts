/** Flights of the logbook are found, named, addressed, deleted and put back, by everybody. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { legible } from "./legible.ts";
import { addMany, allStand, rows, said } from "./logbook.ts";
import { launch, onPage, sheetStands, type Watched, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());
const on = (work: (watched: Watched) => Promise<void>) => onPage(browser, work);

test("flights are searched, ordered, named and tagged together, and found by that", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const found = async () => (await rows(page).locator("th a").allTextContents()).length;
    await page.getByLabel("Search").fill("hold distance");
    expect(await found()).toBe(1);
    await page.getByLabel("Tick all that are listed").check();
    const form = page.getByRole("form", { name: "With the ticked flights" });
    await form.getByLabel("Pilot").fill("A. N.");
    await form.getByLabel("Add tags").fill("night, lesson 11");
    await form.getByRole("button", { name: "Write on it" }).click();
    await page.getByLabel("Search").fill("nothing of this");
    expect(await page.locator(".none").textContent()).toContain("None of the 4 flights is so.");
    await page.locator(".none").getByRole("button", { name: "Show all" }).click();
    expect(await found()).toBe(4);
    await page.locator("search").getByLabel("Tag").selectOption("night");
    expect(await found()).toBe(1);
    expect(await rows(page).first().textContent()).toContain("A. N.");
    await page.getByRole("button", { name: "Show all" }).click();
    await page.getByRole("button", { name: "Flight", exact: true }).click();
    const titles = await rows(page).locator("th a").allTextContents();
    const byName = new Intl.Collator("en-GB", { numeric: true });
    expect(titles).toEqual([...titles].sort(byName.compare));
    await page.reload();
    await allStand(page, 4);
    await page.getByLabel("Search").fill("A. N.");
    expect(await found()).toBe(1);
  }));

test("a flight has its own address: back, forward and a reload go to it; names given on its sheet are in the list", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const links = rows(page).locator("th a");
    const [one, two] = await links.allTextContents();
    await links.nth(0).click();
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(one);
    await page.getByRole("region", { name: "In the logbook" }).getByLabel("Aircraft").fill("the blue one");
    await page.keyboard.press("Tab");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    expect(await rows(page).first().textContent()).toContain("the blue one");
    await links.nth(1).click();
    await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, two);
    await page.locator(".lineup a").first().click();
    await page.reload();
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(two);
    for (let i = 0; i < 3; i++) await page.goBack();
    await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, one);
    await page.goForward();
    expect(await page.locator("h1").textContent()).toBe("Logbook");
    await page.goto(`${page.url().replace(/#.*/, "")}#/flight/nowhere`);
    await said(page, /not in the logbook of this browser/);
    expect(await page.locator("h1").textContent()).toBe("Logbook");
  }));

test("deleted flights can be put back, at once and after a reload, until they are cleared away", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const remove = async () => {
      await rows(page).first().getByRole("checkbox").check();
      await page.getByRole("button", { name: "Delete" }).click();
      await allStand(page, 3);
    };
    await remove();
    await page.locator(".putback").getByRole("button", { name: "Put back" }).click();
    await allStand(page, 4);
    await remove();
    await page.reload();
    await allStand(page, 3);
    await page.locator("summary", { hasText: "1 flight deleted" }).click();
    await page.getByRole("button", { name: "Put all back" }).click();
    await allStand(page, 4);
    await remove();
    await page.locator("summary", { hasText: "1 flight deleted" }).click();
    await page.getByRole("button", { name: "Clear all away, for good" }).click();
    await page.waitForFunction(() => !document.body.textContent?.includes("1 flight deleted"));
    expect(await rows(page).count()).toBe(3);
  }));

test("wide and narrow, light and dark: the logbook can be read by everybody", async () => {
  const { page, close } = await watchedPage(browser, { bypassCSP: true });
  await addMany(page);
  await allStand(page, 4);
  await rows(page).first().getByRole("checkbox").check();
  await page.getByRole("button", { name: "Delete" }).click();
  await allStand(page, 3);
  await page.getByLabel("Tick all that are listed").check();
  for (const summary of await page.locator("details > summary").all()) await summary.click();
  await legible(page, "the logbook");
  await close();
});

test("by keyboard alone: a flight is ticked, named, found and opened", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    await rows(page).first().getByRole("checkbox").focus();
    await page.keyboard.press("Space");
    await page.getByRole("form").getByLabel("Pilot").focus();
    await page.keyboard.type("A. N.");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector(".flights tbody .p")?.textContent === "A. N.");
    await page.getByLabel("Search").focus();
    await page.keyboard.type("a. n.");
    await rows(page).locator("th a").focus();
    await page.keyboard.press("Enter");
    await sheetStands(page);
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
  }));

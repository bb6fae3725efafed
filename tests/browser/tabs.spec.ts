/** Two tabs on one logbook, and on one sheet. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { addMany, allStand, anotherTab, rows, said } from "./logbook.ts";
import { openSample, pagesOfOneBrowser, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

test("two tabs: a change in one is seen in the other", () =>
  on(async (watched) => {
    const other = await anotherTab(watched);
    await addMany(watched.page);
    await allStand(other, 4);
    await rows(other).first().getByRole("checkbox").check();
    await other.getByRole("button", { name: "Delete" }).click();
    await allStand(watched.page, 3);
  }));

test("a newer tab wants the logbook: this one says so and lets it go", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const request = indexedDB.open("hindtrack", 99);
          request.onsuccess = () => {
            request.result.close();
            done();
          };
        }),
    );
    await said(page, /A newer Hindtrack wants the logbook.*Reload this tab/);
  }));

test("two tabs on one sheet: a remark and a verdict written in one show in the other at once, and both tabs' words stay", () =>
  on(async (watched) => {
    const { page } = watched;
    await openSample(page, "A strong crosswind");
    const other = await anotherTab(watched);
    await other.goto(page.url());
    await other.reload(); // the address alone changed
    await sheetStands(other);
    const remark = (tab: Page, exercise: number) => tab.locator(`#exercise-${exercise} .remark textarea`);
    await remark(page, 1).fill("Nose into the wind sooner.");
    await other.waitForFunction(
      () => document.querySelector<HTMLTextAreaElement>("#exercise-1 .remark textarea")?.value !== "",
    );
    expect(await remark(other, 1).inputValue()).toBe("Nose into the wind sooner.");
    await remark(other, 2).pressSequentially("Held it well.");
    await other.locator("#remark").fill("Next: holds.");
    await page.waitForFunction(
      () =>
        document.querySelector<HTMLTextAreaElement>("#exercise-2 .remark textarea")?.value ===
          "Held it well." && document.querySelector<HTMLTextAreaElement>("#remark")?.value === "Next: holds.",
    );
    await remark(page, 1).fill("");
    await other.waitForFunction(
      () => document.querySelector<HTMLTextAreaElement>("#exercise-1 .remark textarea")?.value === "",
    );
    expect(await remark(other, 2).inputValue()).toBe("Held it well.");
    await page.locator("#exercise-1 summary", { hasText: "Overrule a verdict" }).click();
    await page.locator("#exercise-1").getByRole("button", { name: "Overrule" }).click();
    await other.locator("#exercise-1 .verdicts", { hasText: "instructor’s" }).waitFor();
    await page.reload();
    await sheetStands(page);
    expect(await remark(page, 2).inputValue()).toBe("Held it well.");
    expect(await page.locator("#remark").inputValue()).toBe("Next: holds.");
  }));

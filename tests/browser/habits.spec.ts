/** From a habit to the moment that shows it and back, pilot by pilot; and what the instructor decided, in the list. Pilots with one habit each are the simulator's. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, pilotLesson } from "../../src/simulator/index.ts";
import { anotherTab, rows, said } from "./logbook.ts";
import { drop, type Given, openSample, pagesOfOneBrowser, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

const LESSONS = [1, 2, 3, 4, 5];
function season(): Given[] {
  const flights = LESSONS.flatMap((day): Given[] => {
    const lesson = pilotLesson("descends-late", day, "right");
    return [
      { name: `lesson-${day}.gpx`, text: gpxText(fly(lesson, day).track, 5) },
      { name: `lesson-${day}.yaml`, text: lesson.brief ?? "" },
    ];
  });
  const people = LESSONS.map((day) => `lesson-${day}.gpx,${day < 5 ? "Bo" : "Al"}`);
  return [...flights, { name: "flights.csv", text: ["file,pilot", ...people].join("\n") }];
}

const head = (page: Page, words: string) =>
  page.waitForFunction(
    (start) => document.querySelector(".habits .what")?.textContent?.startsWith(start),
    words,
  );

test("a habit leads to its exercise and moment, opened and in view; back from there the choice stands", () =>
  on(async ({ page }) => {
    await drop(page, season());
    await said(page, /5 flights added/);
    await page.getByRole("link", { name: "Habits" }).click();
    await head(page, "5 flights of 2 pilots together");
    const each = page.getByRole("region", { name: "Pilot by pilot" });
    expect(await each.locator("li").allTextContents()).toEqual([
      "Al, 1 flight: no habit stands out.",
      expect.stringMatching(/^Bo, 4 flights: /),
    ]);
    await page.getByLabel("From (UTC)").fill("2026-03-01");
    const late = page.locator(".practise li", { hasText: "Descents are begun" });
    await late
      .getByRole("link", { name: /, exercise \d+$/ })
      .first()
      .click();
    await sheetStands(page);
    await page.waitForFunction(() => document.activeElement?.textContent?.startsWith("Descent to"));
    const seen = await page.evaluate(() => {
      const section = document.activeElement!.closest("section.ex")!;
      return {
        top: Math.abs(section.getBoundingClientRect().top),
        text: section.querySelector(".replay")?.textContent ?? "",
      };
    });
    expect(seen.top).toBeLessThan(5);
    const began = /(\d\d:\d\d:\d\d)Z?~|T(\d\d:\d\d:\d\d)/.exec(page.url())!;
    expect(seen.text).toContain(began[1] ?? began[2]!);
    await page.goBack();
    await head(page, "5 flights of 2 pilots together");
    expect(await page.getByLabel("From (UTC)").inputValue()).toBe("2026-03-01");
    await each.getByRole("button", { name: "Bo" }).click();
    await head(page, "4 flights of Bo");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await page.getByRole("link", { name: "Habits" }).click();
    await head(page, "4 flights of Bo");
    await page.reload();
    await head(page, "4 flights of Bo");
  }));

test("a verdict that the instructor overruled counts as decided in the list, marked, and in another tab", () =>
  on(async (watched) => {
    const { page } = watched;
    await openSample(page, "A strong crosswind");
    const other = await anotherTab(watched);
    const cell = async () => (await rows(other).first().locator("td.v").textContent()) ?? "";
    await expect.poll(cell).toMatch(/\d+ (?:not )?met/);
    /** How many of each verdict: "2 not met, 3 met". */
    const counts = async () =>
      Object.fromEntries(
        [...(await cell()).matchAll(/(\d+) (not met|met|cannot tell)/g)].map((m) => [m[2], +m[1]!]),
      );
    const before = await counts();
    const overruling = page.locator(".overruling").first();
    await overruling.locator("summary").click();
    const [criterion, mine] = [overruling.locator("select").nth(0), overruling.locator("select").nth(1)];
    const from = (await criterion.locator("option").first().textContent())!.split(": ").at(-1)!;
    const to = await mine.inputValue();
    await overruling.getByRole("button").first().click();
    await expect.poll(cell).toContain("1 as the instructor decided");
    const after = await counts();
    expect([after[from] ?? 0, after[to]]).toEqual([before[from]! - 1, (before[to] ?? 0) + 1]);
  }));

test("two tabs: tags typed in one show in the other, and what is being typed there is neither lost nor loses them", () =>
  on(async (watched) => {
    const { page } = watched;
    await openSample(page, "Calm and tidy");
    const other = await anotherTab(watched);
    await other.goto(page.url());
    await sheetStands(other);
    const tags = (of: Page) => of.getByRole("combobox", { name: "Tags" });
    const made = await tags(other).inputValue();
    await tags(other).press("End");
    await tags(other).pressSequentially(", windy");
    await tags(page).fill(`${made}, night`);
    await tags(page).press("Enter");
    await page.waitForTimeout(1500);
    expect(await tags(other).inputValue()).toBe(`${made}, windy`);
    await tags(other).press("Enter");
    for (const tab of [page, other])
      await expect.poll(() => tags(tab).inputValue()).toBe(`${made}, night, windy`);
  }));

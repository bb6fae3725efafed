/** Everybody can read the page: by keyboard, screen reader, small screen, at night and on paper. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { legible, sideways } from "./legible.ts";
import { launch, openSample, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test("wide and narrow, light and dark: the start and a sheet can be read by everybody; each drawing has a name, each table its heads", async () => {
  const { page, trouble, close } = await watchedPage(browser, { bypassCSP: true });
  await legible(page, "the view for opening");
  await openSample(page, "A strong crosswind");
  for (const summary of await page.locator("details > summary").all()) await summary.click();
  await legible(page, "the sheet");
  // the look that was last is dark
  const [paper, ink] = await page.evaluate(() => {
    const style = getComputedStyle(document.documentElement);
    return [style.backgroundColor, style.color].map(
      (c) =>
        c
          .match(/\d+/g)!
          .slice(0, 3)
          .map(Number)
          .reduce((a, b) => a + b, 0) / 3,
    );
  });
  expect(paper).toBeLessThan(60);
  expect(ink).toBeGreaterThan(200);
  const nameless = await page.evaluate(
    () =>
      [...document.querySelectorAll("svg, canvas")].filter(
        (d) => d.getAttribute("aria-hidden") !== "true" && !d.getAttribute("aria-label"),
      ).length,
  );
  expect(nameless).toBe(0);
  const headless = await page.evaluate(
    () => [...document.querySelectorAll("table")].filter((t) => !t.querySelector("th")).length,
  );
  expect(headless).toBe(0);
  expect(await page.locator("canvas").count()).toBeGreaterThan(0);
  expect(trouble).toEqual([]);
  await close();
});

test("by keyboard alone: skip link, sample, focus on the title of the sheet", async () => {
  const { page, close } = await watchedPage(browser);
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe("To the content");
  await page.getByRole("button", { name: "Calm and tidy" }).focus();
  await page.keyboard.press("Enter");
  await sheetStands(page);
  await page.waitForFunction(() => document.activeElement?.tagName === "H1");
  const levels = await page.evaluate(() =>
    [...document.querySelectorAll("h1, h2, h3")].map((h) => Number(h.tagName[1])),
  );
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
  levels.forEach((level, i) => {
    expect(level - (levels[i - 1] ?? 0), "no heading level is skipped").toBeLessThanOrEqual(1);
  });
  await close();
});

test("paper: A4 pages, nothing wider than the sheet, replay and buttons gone, remarks and caution there", async () => {
  const { page, close } = await watchedPage(browser);
  await openSample(page, "Calm and tidy");
  const pdf = await page.pdf({ format: "A4", preferCSSPageSize: true });
  const text = pdf.toString("latin1");
  // A4 is 595.28 by 841.89 points (ISO 216: 210 by 297 mm).
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g)].map((m) => [+m[1]!, +m[2]!]);
  expect(boxes.length).toBeGreaterThan(1);
  for (const [width, height] of boxes) {
    expect(Math.abs(width! - 595.28)).toBeLessThan(1);
    expect(Math.abs(height! - 841.89)).toBeLessThan(1);
  }
  await page.emulateMedia({ media: "print" });
  // 186 mm between the margins, at 96 px an inch.
  await page.setViewportSize({ width: 703, height: 1000 });
  await page.waitForTimeout(300);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  for (const gone of [".replay", ".save", ".fit", "details"]) {
    expect(await page.locator(gone).first().isVisible(), gone).toBe(false);
  }
  for (const there of [".caution", ".remarks textarea", ".sign", ".foot", ".course-figure"]) {
    expect(await page.locator(there).first().isVisible(), there).toBe(true);
  }
  await close();
});

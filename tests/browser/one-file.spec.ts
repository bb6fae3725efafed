/** The sheet saved as one page: opened from a disk without a network, its charts and its replay alive. */
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, openSample, saved, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test("a saved page opens from disk, asks nobody, carries the remark, draws and replays", async () => {
  const watched = await watchedPage(browser);
  await openSample(watched.page, "A strong crosswind");
  await watched.page.locator("#remark").fill("Hold the correction; look at A.");
  const { name, path } = await saved(watched.page, "one page that opens anywhere");
  expect(name).toBe("strong-crosswind-badly-corrected.html");
  expect(watched.trouble).toEqual([]);
  const sentence = await watched.page.locator("#exercise-1 .finding").textContent();
  await watched.close();

  const context = await browser.newContext({ locale: "en-GB", offline: true });
  const asked: string[] = [];
  const trouble: string[] = [];
  context.on("request", (request) => asked.push(request.url()));
  context.on("console", (message) => trouble.push(message.text()));
  context.on("weberror", (error) => trouble.push(String(error.error())));
  const page = await context.newPage();
  const address = pathToFileURL(path).href;
  await page.goto(address);
  await page.waitForSelector(".ex canvas");
  expect(asked.filter((url) => url !== address && !url.startsWith("data:"))).toEqual([]);
  expect(await page.title()).toBe("Lesson 7, radials and a leg, strong wind");
  expect(await page.locator("#exercise-1 .finding").textContent()).toBe(sentence);
  expect(await page.locator("#remark").inputValue()).toBe("Hold the correction; look at A.");
  const drawn = await page
    .locator(".ex canvas")
    .first()
    .evaluate((canvas) => {
      const { width, height } = canvas as HTMLCanvasElement;
      const { data } = (canvas as HTMLCanvasElement).getContext("2d")!.getImageData(0, 0, width, height);
      return data.some((value) => value !== 0);
    });
  expect(drawn).toBe(true);
  const slider = page.getByRole("slider").first();
  const before = await slider.getAttribute("aria-valuetext");
  await slider.press("ArrowRight");
  expect(await slider.getAttribute("aria-valuetext")).not.toBe(before);
  expect(trouble).toEqual([]);
  await context.close();
});

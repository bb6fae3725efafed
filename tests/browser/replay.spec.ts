/** A finding takes every drawing to the time that it rests on, by mouse and by keyboard; and the moment is replayed. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launch, openSample, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

test("its stretch is marked on the plan, the replay goes to its beginning, the drawings come into view; once more lets it go; what would have worked stands beside what was flown", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await openSample(page, "A strong crosswind");
  const exercise = page.locator("#exercise-2");
  const finding = exercise.locator(".evidence button").first();
  expect(await exercise.locator(".evidence li").first().textContent()).toMatch(/^off before the needle told/);
  const [from] = (await finding.textContent())!.split(" to ");
  expect(await exercise.locator(".marked").count()).toBe(0);
  await finding.focus();
  await page.keyboard.press("Enter");
  await exercise.locator(".marked").waitFor();
  expect(await finding.getAttribute("aria-pressed")).toBe("true");
  expect(await exercise.locator(".replay .clock").textContent()).toBe(from);
  await page.waitForFunction(() => {
    const box = document.querySelector("#exercise-2 .course-figure")!.getBoundingClientRect();
    return box.top < innerHeight && box.bottom > 0;
  });
  await page.keyboard.press("Enter");
  expect(await exercise.locator(".marked").count()).toBe(0);
  const plan = exercise.locator(".course-plan");
  expect(await plan.locator("path.solved").count()).toBe(2);
  const words = await plan.locator("text.sol").allTextContents();
  expect(words[0]).toMatch(/^nose on \d{3}°M holds it$/);
  expect(words[1]).toMatch(/^from the ring \d+° back on \d{3}°M, \d\.\d NM$/);
  const told = await exercise.locator(".side").textContent();
  expect(told).toContain(words[0]!.match(/\d{3}°M/)![0]);
  expect(trouble).toEqual([]);
  await close();
});

test("the replay plays at 1 to 20 times, by keys too, and its instruments follow", async () => {
  const { page, trouble, close } = await watchedPage(browser);
  await openSample(page, "A strong crosswind");
  const replay = page.locator("#exercise-2 .replay");
  const clock = replay.locator(".clock");
  const slider = replay.getByRole("slider");
  const speed = replay.locator("select");
  expect(await speed.locator("option").allTextContents()).toEqual(["× 1", "× 2", "× 5", "× 10", "× 20"]);
  const start = await clock.textContent();
  await slider.focus();
  await page.keyboard.press("+");
  expect(await speed.inputValue()).toBe("20");
  await page.keyboard.press("+");
  expect(await speed.inputValue()).toBe("20");
  await page.keyboard.press("Space");
  await page.waitForFunction(
    (before) => document.querySelector("#exercise-2 .replay .clock")?.textContent !== before,
    start,
  );
  await page.keyboard.press("Space");
  await replay.getByRole("button", { name: "Play", exact: true }).waitFor();
  await page.waitForTimeout(100); // the frame under way when it stopped
  const stopped = await clock.textContent();
  await page.waitForTimeout(300);
  expect(await clock.textContent()).toBe(stopped);
  await page.keyboard.press("-");
  expect(await speed.inputValue()).toBe("10");
  const instruments = await replay.locator("dt").allTextContents();
  expect(instruments).toEqual([
    ...["Track", "Heading, estimated", "Wind here", "From TARNO", "Over the ground", "Height by the log"],
  ]);
  for (const value of await replay.locator("dd").allTextContents())
    expect(value).not.toMatch(/NaN|not known/);
  expect(await page.locator("#exercise-2 .cursor-rule").first().isVisible()).toBe(true);
  expect(trouble).toEqual([]);
  await close();
});

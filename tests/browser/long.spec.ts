/** A log of 100,000 points: progress is shown, the page answers all the while, and reading can be cancelled. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drop, launch, openSample, sampleFile, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

const POINTS = 100_000;
/** The longest task of the page's own thread that is not felt, ms: wanted of the page. */
const MOST_MS = 100;

interface Watch {
  readonly log: File;
  readonly tasks: number[];
  readonly shares: number[];
}
type Watching = Window & { readonly watch: Watch };

/** Straights of five minutes with turns of 90° between them in a wind, ten points a second, made in the page itself. */
async function makeLog(page: Page): Promise<void> {
  await page.evaluate((points) => {
    const rows = ['<gpx version="1.1"><trk><name>Long</name><trkseg>\n'];
    let [latitude, longitude, heading] = [35.6, 172.3, 40];
    for (let i = 0; i < points; i++) {
      if ((i / 10) % 330 > 300) heading += 0.3;
      const angle = (heading * Math.PI) / 180;
      latitude += (51 * Math.cos(angle) - 5) / 10 / 111_000;
      longitude += (51 * Math.sin(angle) + 3) / 10 / 90_000;
      const time = new Date(Date.UTC(2026, 9, 17) + i * 100).toISOString();
      rows.push(
        `<trkpt lat="${latitude.toFixed(7)}" lon="${longitude.toFixed(7)}"><ele>900</ele><time>${time}</time></trkpt>\n`,
      );
    }
    const tasks: number[] = [];
    const shares: number[] = [];
    const log = new File([...rows, "</trkseg></trk></gpx>"], "long.gpx");
    Object.assign(window, { watch: { log, tasks, shares } satisfies Watch });
    const watcher = new PerformanceObserver((list) => {
      for (const task of list.getEntries()) tasks.push(task.duration);
    });
    new MutationObserver(() => {
      const share = document.querySelector("progress")?.getAttribute("value");
      if (share && Number(share) !== shares.at(-1)) shares.push(Number(share));
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
    // What making the log took is not the page's doing.
    setTimeout(() => watcher.observe({ type: "longtask" }), 200);
  }, POINTS);
  await page.waitForTimeout(500);
}

const dropLog = (page: Page) =>
  page.evaluate(() => {
    const transfer = new DataTransfer();
    transfer.items.add((window as unknown as Watching).watch.log);
    const target = document.querySelector(".drop, .head")!;
    target.dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });

test("100,000 points: progress is shown, and the longest task of the page is told", async () => {
  // Other work on the machine only makes tasks longer: the best of three counts.
  const longest: number[] = [];
  while (longest.length < 3 && !longest.some((ms) => ms <= MOST_MS)) {
    const { page, trouble, close } = await watchedPage(browser);
    await makeLog(page);
    await dropLog(page);
    await sheetStands(page);
    await page.waitForTimeout(300);
    const { tasks, shares } = await page.evaluate(() => {
      const { tasks, shares } = (window as unknown as Watching).watch;
      return { tasks, shares };
    });
    expect(await page.locator(".head .what").textContent()).toContain("100,000 of 100,000 points used");
    expect(await page.locator(".ex .course-figure canvas").count()).toBeGreaterThan(20);
    expect(shares.length).toBeGreaterThanOrEqual(4);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(trouble).toEqual([]);
    longest.push(Math.max(0, ...tasks));
    await close();
  }
  // how long they take is the machine's as well: told, not judged
  console.log(`longest tasks of the page, wanted ${MOST_MS} ms: ${longest.join(", ")} ms`);
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

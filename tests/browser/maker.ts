/** What the tests of the maker share: a flown hold, the maker of its sheet, and what the sheet says. */
import type { Page } from "playwright-core";
import { drop, sampleFile, sheetStands } from "./page.ts";

/** A course of 282 to TARNO and a hold there, inbound 247, right turns: as that sample was flown. */
export const HOLD = sampleFile("hold-direct-well-flown", "log.gpx");
export const openLog = async (page: Page, text = HOLD): Promise<void> => {
  await drop(page, [{ name: "log.gpx", text }]);
  await sheetStands(page);
};
export const maker = (page: Page) => page.getByRole("region", { name: "The brief: what was meant" });
export const openMaker = async (page: Page) => {
  await page.getByRole("button", { name: /make a brief|Change the brief/ }).click();
  return maker(page);
};
export const lineUp = (page: Page): Promise<string> =>
  page.locator(".lineup tbody").textContent().then(String);
/** Until the sheet says so: it follows by itself. */
export const sheetSays = (page: Page, words: RegExp): Promise<unknown> =>
  page.waitForFunction(
    ([source]) =>
      new RegExp(source!, "s").test(document.querySelector<HTMLElement>(".lineup")?.textContent ?? ""),
    [words.source],
  );

/** Where the flight first was nearest to TARNO, as a pixel on the plan: where a pilot would click. */
export async function clickTarno(page: Page): Promise<void> {
  const points = [...HOLD.matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)"/g)].map(([, lat, lon]) => [
    Number(lat),
    Number(lon),
  ]);
  const off = ([lat, lon]: number[]) => Math.hypot(lat! - 35.6, (lon! - 172.3) * Math.cos(0.62));
  const nearest = points.reduce((best, point, i) => (off(point) < off(points[best]!) ? i : best), 0);
  const share = nearest / (points.length - 1);
  const plan = page.getByRole("application", { name: /The flight from above/ });
  const place = await plan.locator("path.flown").evaluate((path, at) => {
    const spots = (path.getAttribute("d") ?? "").split(/[ML]/).filter(Boolean);
    return spots[Math.round(at * (spots.length - 1))]!.split(" ").map(Number);
  }, share);
  await plan.click({ position: { x: place[0]!, y: place[1]! } });
}

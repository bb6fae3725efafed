/** What the tests of the logbook share: four flights, the rows, what is said, tabs that die and tabs beside. */
import type { Page } from "playwright-core";
import { inject } from "vitest";
import { drop, type Given, sampleFile, type Watched } from "./page.ts";

const NAMES = ["calm-and-tidy", "strong-crosswind-badly-corrected", "needle-chased", "hold-by-distance"];
export const MANY: Given[] = NAMES.flatMap((name) => [
  { name: `${name}.gpx`, text: sampleFile(name, "log.gpx") },
  { name: `${name}.yaml`, text: sampleFile(name, "brief.yaml") },
]);

export const rows = (page: Page) => page.locator(".flights tbody tr");
export const said = (page: Page, words: RegExp) =>
  page.waitForFunction(
    ([source]) => new RegExp(source!).test(document.querySelector('[role="alert"]')?.textContent ?? ""),
    [words.source],
  );
/** Every row has been worked out. */
export const allStand = (page: Page, n: number) =>
  page.waitForFunction(
    (n) => {
      const list = [...document.querySelectorAll(".flights tbody tr")];
      return list.length === n && list.every((row) => !row.textContent?.includes("waits to be worked out"));
    },
    n,
    { timeout: 60_000 },
  );
export const addMany = async (page: Page) => {
  await drop(page, MANY);
  await said(page, /4 flights added/);
};
/** The tab ends at once, as when its process dies: nothing can be tidied up. */
export async function kill(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  void session.send("Page.crash").catch(() => {});
  await crashed;
}
/** Drops a log so long that its reading, or its keeping, takes a while: blanks say nothing in XML. */
export async function dropPadded(page: Page, { name, text }: Given, blanks: number): Promise<void> {
  const end = text.indexOf("</trkseg>");
  const given = { name, head: text.slice(0, end), blanks, tail: text.slice(end) };
  await page.evaluate(({ name, head, blanks, tail }) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([head, " ".repeat(blanks), tail], name));
    const event = new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true });
    document.querySelector(".drop, .head")!.dispatchEvent(event);
  }, given);
}

export async function anotherTab({ page }: Watched): Promise<Page> {
  const tab = await page.context().newPage();
  await tab.goto(inject("address"));
  await tab.waitForSelector("h1");
  return tab;
}

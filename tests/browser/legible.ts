/** What keeps a page from being read, in each look that it is read in: what axe-core finds serious, and what scrolls sideways. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds that is serious or critical, with the places. */
async function serious(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const axe = (window as unknown as { axe: typeof import("axe-core") }).axe;
    const { violations, passes } = await axe.run();
    if (passes.length === 0) return ["axe-core looked at nothing"];
    return violations
      .filter((v) => v.impact === "serious" || v.impact === "critical")
      .map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`);
  });
}

export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

const LOOKS = [
  ["wide and light", { viewport: { width: 1280, height: 900 }, colorScheme: "light" }],
  ["wide and dark", { viewport: { width: 1280, height: 900 }, colorScheme: "dark" }],
  ["narrow and light", { viewport: { width: 390, height: 844 }, colorScheme: "light" }],
  ["narrow and dark", { viewport: { width: 390, height: 844 }, colorScheme: "dark" }],
] as const;

/** Wide and narrow, light and dark, one after the other: the page as it stands is legible in each. Its context must bypass its policy. */
export async function legible(page: Page, what: string): Promise<void> {
  for (const [look, { viewport, colorScheme }] of LOOKS) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    // what is drawn for a width is drawn anew in the frame after it is measured
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    expect(await serious(page), `${what}, ${look}`).toEqual([]);
    expect(await sideways(page), `${what}, ${look}: sideways, px`).toBeLessThanOrEqual(0);
  }
}

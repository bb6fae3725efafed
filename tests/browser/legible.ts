/** What keeps a page from being read: what axe-core finds serious, and what scrolls sideways; and the looks it is read in. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds that is serious or critical, with the places. */
export async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
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

export const LOOKS = [
  ["wide and light", { viewport: { width: 1280, height: 900 }, colorScheme: "light" }],
  ["wide and dark", { viewport: { width: 1280, height: 900 }, colorScheme: "dark" }],
  ["narrow and light", { viewport: { width: 390, height: 844 }, colorScheme: "light" }],
  ["narrow and dark", { viewport: { width: 390, height: 844 }, colorScheme: "dark" }],
] as const;

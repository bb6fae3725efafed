/** Holds on the page: a sample with its laps as the document has them, the moment replayed, and the panel for the next one. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { parse } from "yaml";
import type { DebriefDocument } from "../../src/index.ts";
import { legible } from "./legible.ts";
import { openSample, pagesOfOneBrowser, sampleFile, saved } from "./page.ts";

const on = pagesOfOneBrowser();

const NAME = "hold-outbound-flown-parallel";
const TITLE = "A hold, outbound flown parallel";

const savedDocument = async (page: Page): Promise<DebriefDocument> =>
  JSON.parse((await saved(page, "document (JSON)")).text);

test("a sample with a hold opens: its laps in the table are those of the document", () =>
  on(async ({ page }) => {
    await openSample(page, TITLE);
    const hold = (await savedDocument(page)).exercises.find((e) => e.kind === "hold")!;
    if (!hold.facts || !("laps" in hold.facts)) return expect.fail("the hold was not measured");
    expect(hold.title).toContain(`inbound ${parse(sampleFile(NAME, "brief.yaml")).exercises[0].inbound}`);
    const { laps } = hold.facts;
    const rows = await page
      .locator(".laps tbody")
      .evaluateAll((bodies) =>
        bodies.map((b) => [...b.querySelectorAll("tr")].map((r) => [...r.cells].map((c) => c.textContent))),
      );
    expect(rows).toHaveLength(laps.length);
    for (const [i, lap] of laps.entries()) {
      const [flown, asked] = rows[i]!;
      expect(flown!.slice(0, 2)).toEqual([String(i + 1), "flown"]);
      expect(flown).toContain(`${Math.round(lap.outbound.seconds)} s`);
      const rollOut = lap.rollOut!;
      const size = Math.abs(rollOut.acrossNm).toFixed(2);
      expect(flown!.join("|")).toContain(`${size} NM ${rollOut.acrossNm > 0 ? "R" : "L"}`);
      const { solved } = lap;
      if (!solved || "none" in solved) return expect.fail("no lap of the sample is without a solution");
      expect(asked!.join("|")).toContain(`×${solved.factor!.toFixed(1)}`);
    }
    expect(await page.locator(".hold-plan svg .flown[class*='lap-']").count()).toBe(laps.length);
    expect(await page.locator(".ex").first().textContent()).not.toMatch(/NaN|undefined|Invalid|null/);
  }));

test("the slider moves a ring in the plan and tells leg, heading, track and distance", () =>
  on(async ({ page }) => {
    await openSample(page, TITLE);
    const slider = page.getByRole("slider", { name: /Moment of Hold/ });
    await slider.focus();
    for (let i = 0; i < 40; i++) await page.keyboard.press("PageUp");
    const readout = page.locator(".readout");
    expect(await readout.textContent()).toMatch(/Heading, estimated\d{3}°M/);
    expect(await readout.textContent()).toMatch(/Where(Lap \d|entry|after)/);
    expect(await page.locator(".hold-plan .moment").count()).toBe(1);
    // and all of it as a table: a row each half minute, with the laps and legs of the document
    await page.getByText("The plan as a table, every half minute").click();
    const cells = await page
      .getByRole("region", { name: /^The plan as a table, Hold/ })
      .locator("tbody tr")
      .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
    const hold = (await savedDocument(page)).exercises.find((e) => e.kind === "hold")!;
    if (!hold.facts || !("laps" in hold.facts)) return expect.fail("the hold was not measured");
    const seconds = (Date.parse(hold.endUtc!) - Date.parse(hold.startUtc!)) / 1000;
    expect(Math.abs(cells.length - seconds / 30)).toBeLessThan(3);
    const legOf = (utc: string) => cells.find(([time]) => `${hold.startUtc!.slice(0, 11)}${time}Z` >= utc)!;
    for (const [i, { outbound }] of hold.facts.laps.entries())
      expect(legOf(outbound.fromUtc).slice(1, 3)).toEqual([String(i + 1), "outbound"]);
    expect(cells.flat().join()).not.toMatch(/NaN|undefined|Invalid|null/);
  }));

test("the panel is reached from the start, checks what is typed, and answers in words and as a drawing at once", () =>
  on(async ({ page }) => {
    await page.getByRole("link", { name: "a hold solved for a wind" }).click();
    const answer = page.getByRole("status").filter({ hasText: /\w/ });
    await page.getByLabel("Inbound course", { exact: true }).fill("247");
    await page.getByLabel("True airspeed, kt").fill("100");
    await page.getByLabel("Wind, from / kt").fill("157/20");
    // 2.8 times and 70 s: the worked table of the law, 20 kt square to the course
    await expect
      .poll(() => answer.textContent())
      .toContain("2.8 times the inbound correction outbound, 70 s");
    expect(await page.locator(".hold-plan svg path.solved").count()).toBe(1);
    await page.getByLabel("Leg").fill("4");
    await page.getByLabel("Altitude, ft").focus();
    expect(await page.locator(".wrong").textContent()).toBe(
      "“4” cannot be read as the leg. Write it as in 1 min, 90 s or 4 NM.",
    );
    expect(await page.getByLabel("Leg").getAttribute("aria-invalid")).toBe("true");
    await page.getByLabel("Leg").fill("4 NM");
    await expect.poll(() => page.locator(".hold-plan svg path.solved").count()).toBe(1);
    await page.getByLabel("Wind, from / kt").fill("247/70");
    await page.getByLabel("Leg").fill("1 min");
    await expect.poll(() => answer.textContent()).toContain("No solution with this leg");
  }));

test("the panel is filled from the hold of the sheet, and going back loses nothing", () =>
  on(async ({ page }) => {
    await openSample(page, TITLE);
    await page.getByRole("button", { name: "Solve this hold for the next flight" }).click();
    expect(await page.getByLabel("Inbound course", { exact: true }).inputValue()).toBe("247");
    expect(await page.getByLabel("Wind, from / kt").inputValue()).toMatch(/^\d{3}\/\d+$/);
    expect(await page.locator(".finding").textContent()).toMatch(/This wind asks for \d\.\d times/);
    await page.getByRole("link", { name: "Back to the sheet" }).click();
    await page.waitForSelector(".head h1");
    await page.getByRole("link", { name: "Next hold" }).click();
    expect(await page.getByLabel("Inbound course", { exact: true }).inputValue()).toBe("247");
  }));

test("wide and narrow, light and dark: a hold and the panel can be read by everybody", () =>
  on(
    async ({ page }) => {
      await openSample(page, TITLE);
      await legible(page, "the sheet");
      await page.getByRole("button", { name: "Solve this hold for the next flight" }).click();
      await page.getByLabel("Leg").fill("4");
      await page.getByLabel("Altitude, ft").focus();
      await legible(page, "the panel");
      await page.getByLabel("Leg").fill("1 min");
      await legible(page, "the panel with its answer");
    },
    { bypassCSP: true },
  ));

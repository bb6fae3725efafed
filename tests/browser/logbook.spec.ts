/** The logbook takes flights in: many files at once, several flights of one file, the same again, habits over them, an older analysis. */
import { expect, test } from "vitest";
import { allStand, MANY, rows, said } from "./logbook.ts";
import { drop, openSample, pagesOfOneBrowser, sampleFile, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

test("logs of four flights with their briefs, dropped together, are four flights; what cannot be read is named", () =>
  on(async ({ page }) => {
    await drop(page, [...MANY, { name: "notes.txt", text: "met at the field\n" }]);
    await said(page, /notes\.txt.*4 flights added to the logbook/s);
    await allStand(page, 4);
    const text = await rows(page).allTextContents();
    expect(text.filter((t) => /Lesson \d+/.test(t))).toHaveLength(4);
    expect(text.filter((t) => t.includes("1 hold"))).toHaveLength(1);
    await drop(page, MANY);
    await said(page, /0 flights added to the logbook\. 4 of these stood there already/);
    expect(await rows(page).count()).toBe(4);
  }));

test("one bad brief among the briefs of many flights spoils its own flight alone", () =>
  on(async ({ page }) => {
    const lesson = (sample: string, name: string, change = (text: string) => text) => [
      { name: `${name}.gpx`, text: sampleFile(sample, "log.gpx") },
      { name: `${name}.yaml`, text: change(sampleFile(sample, "brief.yaml")) },
    ];
    const bad = lesson("needle-chased", "bad", (text) => text.replace("brief: 1", "brief: 9"));
    await drop(page, [...bad, ...lesson("hold-teardrop-left-turns", "good")]);
    await expect.poll(() => rows(page).count()).toBe(2);
    await expect.poll(async () => (await rows(page).allTextContents()).join("\n")).toMatch(/1 hold/);
    await expect.poll(async () => (await rows(page).allTextContents()).join("\n")).toMatch(/bad\.yaml/);
  }));

test("a bad log beside a good one is said with its cause, and the flight is called by the good one", () =>
  on(async ({ page }) => {
    await drop(page, [
      { name: "a-empty.gpx", text: "" },
      { name: "lesson.gpx", text: sampleFile("calm-and-tidy", "log.gpx") },
      { name: "lesson.yaml", text: sampleFile("calm-and-tidy", "brief.yaml") },
    ]);
    await sheetStands(page);
    expect(await page.getByRole("alert").textContent()).toMatch(/a-empty\.gpx.*empty/);
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    const [row] = await rows(page).allTextContents();
    expect(row).toContain("lesson.gpx");
    expect(row).not.toContain("a-empty");
  }));

/** The first quarter of an hour of a sample, and the same flown again four hours later after a stay. */
function twoFlights(): string {
  const lines = sampleFile("calm-and-tidy", "log.gpx").split("\n");
  const points = lines.filter((line) => line.includes("<trkpt")).slice(0, 900);
  const later = points.map((line) => line.replace(/T01:/, "T05:"));
  const stay = Array.from({ length: 120 }, (_, i) =>
    points[0]!.replace(/T\d\d:\d\d:\d\d/, `T05:0${Math.floor(i / 60)}:${String(i % 60).padStart(2, "0")}`),
  );
  return lines.join("\n").replace("</trkseg>", `</trkseg><trkseg>${[...stay, ...later].join("\n")}</trkseg>`);
}

test("a log of two flights, dropped with another, gives two rows", () =>
  on(async ({ page }) => {
    await drop(page, [{ name: "day.gpx", text: twoFlights() }, MANY[2]!, MANY[3]!]);
    await said(page, /3 flights added to the logbook/);
    await allStand(page, 3);
    const days = await rows(page).locator(".d").allTextContents();
    expect(days.filter((text) => text.includes("05:"))).toHaveLength(1);
  }));

test("adding can be cancelled: what is finished stays, the rest is as if it had not come", () =>
  on(async ({ page }) => {
    // pressed in the moment that the second is begun: a press from here might come when it is done
    await page.evaluate(() => {
      const press = new MutationObserver(() => {
        if (!document.querySelector(".underway")?.textContent?.includes("2 of 4")) return;
        press.disconnect();
        [...document.querySelectorAll("button")].find((b) => b.textContent?.trim() === "Cancel")!.click();
      });
      press.observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    await drop(page, MANY);
    await said(page, /Cancelled: 1 of 4 flights added/);
    await allStand(page, 1);
    await page.reload();
    await allStand(page, 1);
  }));

test("the same log again is the same flight, with what was noted on it; another brief makes another", () =>
  on(async ({ page }) => {
    const [log, brief] = MANY;
    await drop(page, [log!, brief!]);
    await sheetStands(page);
    await page.getByRole("textbox", { name: "Remarks", exact: true }).fill("Well held.");
    await drop(page, [brief!, log!]);
    await said(page, /was in the logbook already/);
    await sheetStands(page);
    expect(await page.getByRole("textbox", { name: "Remarks", exact: true }).inputValue()).toBe("Well held.");
    await drop(page, [log!]);
    await page.waitForFunction(() => document.querySelector(".what")?.textContent?.includes("straightness"));
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await allStand(page, 2);
  }));

test("habits over the flights of the logbook: made-up ones are left out, the view has its address", () =>
  on(async ({ page }) => {
    expect(await page.getByRole("link", { name: "Habits" }).count()).toBe(0);
    await openSample(page, "The needle chased");
    await page.getByRole("link", { name: "Habits" }).click();
    const view = page.locator("#content");
    await page.locator(".habits h1").waitFor();
    expect(await view.textContent()).toContain("These flights are made up");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await drop(page, MANY.slice(0, 4));
    await said(page, /2 flights added/);
    await page.getByRole("link", { name: "Habits" }).click();
    await page.waitForFunction(() =>
      document.querySelector(".habits .what")?.textContent?.includes("2 flights"),
    );
    expect(await view.textContent()).toContain("Left out here: 1 flight, made up.");
    await page.reload();
    await page.locator(".habits h1").waitFor();
    expect(await page.locator(".habits h1").textContent()).toBe("What keeps coming back");
  }));

test("flights without a pilot's name are said to be taken as one pilot's, and are named where that is said", () =>
  on(async ({ page }) => {
    await drop(page, MANY.slice(0, 4));
    await said(page, /2 flights added/);
    await page.getByRole("link", { name: "Habits" }).click();
    const practising = page.locator(".practising");
    await practising
      .getByText(/No pilot is named for these flights: they are taken as one pilot’s/)
      .waitFor();
    await practising.getByRole("combobox", { name: "Pilot of 2 flights without a name" }).fill("Bo");
    await practising.getByRole("button", { name: "Write on all" }).click();
    await page.waitForFunction(() =>
      document.querySelector(".habits .what")?.textContent?.startsWith("2 flights of Bo,"),
    );
    expect(await practising.textContent()).not.toMatch(/taken as|without a name/);
  }));

test("a table of who flew what names its flights: dropped with their logs, or later; files that it does not know are told", () =>
  on(async ({ page }) => {
    const table = (text: string) => ({ name: "flights.csv", text: `file,pilot,aircraft\n${text}` });
    const [one, two] = ["calm-and-tidy.gpx", "week/strong-crosswind-badly-corrected.gpx"];
    await drop(page, [...MANY.slice(0, 4), table(`${one},Bo,school one\n${two},Al,\n`)]);
    await said(page, /2 flights added.*flights\.csv: pilot and aircraft written on 2 flights of the logbook/);
    const people = async () =>
      (await rows(page).allTextContents()).map((text) => /Bo|Al|Cy/.exec(text)?.[0]).sort();
    expect(await people()).toEqual(["Al", "Bo"]);
    await drop(page, [table(`${one},Cy,\ngone.gpx,Cy,\n`)]);
    await said(page, /written on 1 flight of the logbook.*It names 1 of no flight in the logbook: gone\.gpx/);
    expect(await people()).toEqual(["Al", "Cy"]);
    expect((await rows(page).allTextContents()).join(" ")).toContain("school one");
  }));

test("flights worked out by an older analysis are worked out anew, and what was noted on them stays", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    await page.getByRole("textbox", { name: "Remarks", exact: true }).fill("Well held.");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await allStand(page, 1);
    const analysis = (set: number | null) =>
      page.evaluate(
        (set) =>
          new Promise<number>((done) => {
            const open = indexedDB.open("hindtrack");
            open.onsuccess = () => {
              const store = open.result.transaction("flights", "readwrite").objectStore("flights");
              const all = store.getAll();
              all.onsuccess = () => {
                const [row] = all.result;
                if (set !== null)
                  store.put({ ...row, analysis: set, summary: { ...row.summary, title: "old" } });
                open.result.close();
                done(row.analysis);
              };
            };
          }),
        set,
      );
    await page.waitForTimeout(600); // the remark is on its way into the row
    const now = await analysis(-1);
    await page.reload();
    await page.waitForFunction(() => /Lesson 6/.test(document.querySelector(".flights")?.textContent ?? ""));
    expect(await analysis(null)).toBe(now);
    await page.getByLabel("Search").fill("well held");
    await rows(page).locator("th a").click();
    await sheetStands(page);
    expect(await page.getByRole("textbox", { name: "Remarks", exact: true }).inputValue()).toBe("Well held.");
  }));

test("after the first flight those that are made up are one click away", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await allStand(page, 1);
    const sample = page.getByRole("button", { name: "The needle chased" });
    expect(await sample.isVisible()).toBe(false);
    await page.getByRole("button", { name: "Or look at one that is made up" }).click();
    await sample.click();
    await sheetStands(page);
  }));

/** The logbook: many files at once, looking for flights, names, the bin; two tabs; what a full or closed store does; nothing lost when the tab dies. */
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { legible } from "./legible.ts";
import {
  drop,
  type Given,
  launch,
  openSample,
  sampleFile,
  saved,
  sheetStands,
  type Watched,
  watchedPage,
} from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

async function on(work: (watched: Watched) => Promise<void>): Promise<void> {
  const watched = await watchedPage(browser);
  try {
    await work(watched);
    expect(watched.elsewhere, "requests that left the local server").toEqual([]);
    expect(watched.trouble, "console errors and broken policies").toEqual([]);
  } finally {
    await watched.close();
  }
}

const NAMES = ["calm-and-tidy", "strong-crosswind-badly-corrected", "needle-chased", "hold-by-distance"];
const MANY: Given[] = NAMES.flatMap((name) => [
  { name: `${name}.gpx`, text: sampleFile(name, "log.gpx") },
  { name: `${name}.yaml`, text: sampleFile(name, "brief.yaml") },
]);

const rows = (page: Page) => page.locator(".flights tbody tr");
const said = (page: Page, words: RegExp) =>
  page.waitForFunction(
    ([source]) => new RegExp(source!).test(document.querySelector('[role="alert"]')?.textContent ?? ""),
    [words.source],
  );
/** Every row has been worked out. */
const allStand = (page: Page, n: number) =>
  page.waitForFunction(
    (n) => {
      const list = [...document.querySelectorAll(".flights tbody tr")];
      return list.length === n && list.every((row) => !row.textContent?.includes("waits to be worked out"));
    },
    n,
    { timeout: 60_000 },
  );
const addMany = async (page: Page) => {
  await drop(page, MANY);
  await said(page, /4 flights added/);
};
/** The tab ends at once, as when its process dies: nothing can be tidied up. */
async function kill(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  void session.send("Page.crash").catch(() => {});
  await crashed;
}
/** Drops a log so long that its reading, or its keeping, takes a while: blanks say nothing in XML. */
async function dropPadded(page: Page, { name, text }: Given, blanks: number): Promise<void> {
  const end = text.indexOf("</trkseg>");
  const given = { name, head: text.slice(0, end), blanks, tail: text.slice(end) };
  await page.evaluate(({ name, head, blanks, tail }) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([head, " ".repeat(blanks), tail], name));
    const event = new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true });
    document.querySelector(".drop, .head")!.dispatchEvent(event);
  }, given);
}

async function anotherTab({ page }: Watched): Promise<Page> {
  const tab = await page.context().newPage();
  await tab.goto(inject("address"));
  await tab.waitForSelector("h1");
  return tab;
}

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
        [...document.querySelectorAll("button")].find((b) => b.textContent === "Cancel")!.click();
      });
      press.observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    await drop(page, MANY);
    await said(page, /Cancelled: 1 of 4 flights added/);
    await allStand(page, 1);
    await page.reload();
    await allStand(page, 1);
  }));

test("flights are searched, ordered, named and tagged together, and found by that", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const found = async () => (await rows(page).locator("th a").allTextContents()).length;
    await page.getByLabel("Search").fill("hold distance");
    expect(await found()).toBe(1);
    await page.getByLabel("Tick all that are listed").check();
    const form = page.getByRole("form", { name: "With the ticked flights" });
    await form.getByLabel("Pilot").fill("A. N.");
    await form.getByLabel("Add tags").fill("night, lesson 11");
    await form.getByRole("button", { name: "Write on it" }).click();
    await page.getByLabel("Search").fill("nothing of this");
    expect(await page.locator(".none").textContent()).toContain("None of the 4 flights is so.");
    await page.locator(".none").getByRole("button", { name: "Show all" }).click();
    expect(await found()).toBe(4);
    await page.locator("search").getByLabel("Tag").selectOption("night");
    expect(await found()).toBe(1);
    expect(await rows(page).first().textContent()).toContain("A. N.");
    await page.getByRole("button", { name: "Show all" }).click();
    await page.getByRole("button", { name: "Flight", exact: true }).click();
    const titles = await rows(page).locator("th a").allTextContents();
    const byName = new Intl.Collator("en-GB", { numeric: true });
    expect(titles).toEqual([...titles].sort(byName.compare));
    await page.reload();
    await allStand(page, 4);
    await page.getByLabel("Search").fill("A. N.");
    expect(await found()).toBe(1);
  }));

test("a flight has its own address: back, forward and a reload go to it; names given on its sheet are in the list", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const links = rows(page).locator("th a");
    const [one, two] = await links.allTextContents();
    await links.nth(0).click();
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(one);
    await page.getByRole("region", { name: "In the logbook" }).getByLabel("Aircraft").fill("the blue one");
    await page.keyboard.press("Tab");
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    expect(await rows(page).first().textContent()).toContain("the blue one");
    await links.nth(1).click();
    await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, two);
    await page.locator(".lineup a").first().click();
    await page.reload();
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(two);
    for (let i = 0; i < 3; i++) await page.goBack();
    await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, one);
    await page.goForward();
    expect(await page.locator("h1").textContent()).toBe("Logbook");
    await page.goto(`${page.url().replace(/#.*/, "")}#/flight/nowhere`);
    await said(page, /not in the logbook of this browser/);
    expect(await page.locator("h1").textContent()).toBe("Logbook");
  }));

test("deleted flights can be put back, at once and after a reload, until they are cleared away", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    const remove = async () => {
      await rows(page).first().getByRole("checkbox").check();
      await page.getByRole("button", { name: "Delete" }).click();
      await allStand(page, 3);
    };
    await remove();
    await page.locator(".putback").getByRole("button", { name: "Put back" }).click();
    await allStand(page, 4);
    await remove();
    await page.reload();
    await allStand(page, 3);
    await page.locator("summary", { hasText: "1 flight deleted" }).click();
    await page.getByRole("button", { name: "Put all back" }).click();
    await allStand(page, 4);
    await remove();
    await page.locator("summary", { hasText: "1 flight deleted" }).click();
    await page.getByRole("button", { name: "Clear all away, for good" }).click();
    await page.waitForFunction(() => !document.body.textContent?.includes("1 flight deleted"));
    expect(await rows(page).count()).toBe(3);
  }));

test("wide and narrow, light and dark: the logbook can be read by everybody", async () => {
  const { page, close } = await watchedPage(browser, { bypassCSP: true });
  await addMany(page);
  await allStand(page, 4);
  await rows(page).first().getByRole("checkbox").check();
  await page.getByRole("button", { name: "Delete" }).click();
  await allStand(page, 3);
  await page.getByLabel("Tick all that are listed").check();
  for (const summary of await page.locator("details > summary").all()) await summary.click();
  await legible(page, "the logbook");
  await close();
});

test("by keyboard alone: a flight is ticked, named, found and opened", () =>
  on(async ({ page }) => {
    await addMany(page);
    await allStand(page, 4);
    await rows(page).first().getByRole("checkbox").focus();
    await page.keyboard.press("Space");
    await page.getByRole("form").getByLabel("Pilot").focus();
    await page.keyboard.type("A. N.");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector(".flights tbody .p")?.textContent === "A. N.");
    await page.getByLabel("Search").focus();
    await page.keyboard.type("a. n.");
    await rows(page).locator("th a").focus();
    await page.keyboard.press("Enter");
    await sheetStands(page);
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
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

test("the tab dies while flights are added: all are there afterwards, and worked out", async () => {
  const watched = await watchedPage(browser);
  await drop(watched.page, MANY);
  await watched.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("of 4"),
  );
  await anotherTab(watched); // it must not take the work from the first
  await kill(watched.page);
  await allStand(await anotherTab(watched), 4);
  await watched.close();
});

test("the tab dies while a log is read: the flight is on the sheet when the page opens again", async () => {
  const watched = await watchedPage(browser);
  await dropPadded(watched.page, { name: "long.gpx", text: MANY[0]!.text }, 40_000_000);
  await watched.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("Reading"),
  );
  await kill(watched.page);
  const blank = await watched.page.context().newPage();
  await blank.goto(inject("address"));
  await sheetStands(blank);
  expect(await blank.locator("#log").textContent()).toContain("long.gpx");
  await watched.close();
});

test("the tab dies right after a word was written and a name given: both stand", async () => {
  const watched = await watchedPage(browser);
  const { page } = watched;
  await openSample(page, "Calm and tidy");
  await page.getByRole("region", { name: "In the logbook" }).getByLabel("Pilot").fill("A. N.");
  await page.keyboard.press("Tab");
  const address = page.url();
  await page.getByRole("textbox", { name: "Remarks", exact: true }).pressSequentially("Held");
  await kill(page);
  const blank = await page.context().newPage();
  await blank.goto(address);
  await sheetStands(blank);
  expect(await blank.getByRole("textbox", { name: "Remarks", exact: true }).inputValue()).toBe("Held");
  const pilot = blank.getByRole("region", { name: "In the logbook" }).getByLabel("Pilot");
  await expect.poll(() => pilot.inputValue(), { timeout: 10_000 }).toBe("A. N.");
  await watched.close();
});

const takeIn = (page: Page, buffer: Buffer) =>
  page
    .getByLabel("Logs and briefs")
    .setInputFiles({ name: "logbook.zip", mimeType: "application/zip", buffer });

test("the logbook as one file goes into another browser; the tab dies on the way, and all is there afterwards", async () => {
  const first = await watchedPage(browser);
  await addMany(first.page);
  await allStand(first.page, 4);
  const archive = readFileSync((await saved(first.page, "Save the logbook as one file")).path);
  const list = await rows(first.page).allTextContents();
  expect(first.trouble).toEqual([]);
  await first.close();
  const second = await watchedPage(browser);
  await takeIn(second.page, archive);
  await second.page.waitForFunction(() =>
    document.querySelector(".underway")?.textContent?.includes("Taking in"),
  );
  await kill(second.page);
  const blank = await anotherTab(second);
  await allStand(blank, 4);
  expect(await rows(blank).allTextContents()).toEqual(list);
  await takeIn(blank, archive);
  await said(blank, /logbook\.zip: 0 flights added, 4 stood here already/);
  await second.close();
});

test("two tabs: a change in one is seen in the other", () =>
  on(async (watched) => {
    const other = await anotherTab(watched);
    await addMany(watched.page);
    await allStand(other, 4);
    await rows(other).first().getByRole("checkbox").check();
    await other.getByRole("button", { name: "Delete" }).click();
    await allStand(watched.page, 3);
  }));

test("a newer tab wants the logbook: this one says so and lets it go", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const request = indexedDB.open("hindtrack", 99);
          request.onsuccess = () => {
            request.result.close();
            done();
          };
        }),
    );
    await said(page, /A newer Hindtrack wants the logbook.*Reload this tab/);
  }));

test("a browser that keeps nothing: said plainly, and the sheet stands all the same", async () => {
  const watched = await watchedPage(browser, {}, undefined, () => {
    Object.defineProperty(window, "indexedDB", { get: () => undefined });
  });
  await openSample(watched.page, "Calm and tidy");
  expect(await watched.page.getByRole("alert").textContent()).toContain("This browser keeps nothing");
  expect(watched.trouble).toEqual([]);
  await watched.close();
});

test("the space is full: said plainly, the sheet stands, and the flights before it are safe", async () => {
  const watched = await watchedPage(browser);
  const { page } = watched;
  const session = await page.context().newCDPSession(page);
  const origin = new URL(page.url()).origin;
  // Room for the page itself and some flights.
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 15_000_000 });
  await openSample(page, "Calm and tidy");
  await dropPadded(page, MANY[2]!, 20_000_000);
  await page.waitForFunction(() => document.querySelector("h1")?.textContent?.includes("crosswind"));
  expect(await page.getByRole("alert").textContent()).toContain("is full: the last change was not kept");
  await page.getByRole("link", { name: "Logbook", exact: true }).click();
  await allStand(page, 1);
  await page.reload();
  await allStand(page, 1);
  expect(watched.trouble).toEqual([]);
  await watched.close();
});

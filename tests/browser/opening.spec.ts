/** Files and samples become a sheet; what cannot be used is said, and the page stays usable. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { drop, openSample, pagesOfOneBrowser, sampleFile, saved, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

const SAMPLES = [
  ["calm-and-tidy", "Calm and tidy"],
  ["strong-crosswind-badly-corrected", "A strong crosswind"],
  ["needle-chased", "The needle chased"],
] as const;

test("samples open by one click each, with the title and every exercise of their briefs", () =>
  on(async ({ page }) => {
    for (const [name, title] of SAMPLES) {
      const brief = parse(sampleFile(name, "brief.yaml"));
      await openSample(page, title);
      await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, brief.title);
      await sheetStands(page);
      expect(await page.locator(".lineup tbody tr").count()).toBe(brief.exercises.length);
      expect(await page.locator(".ex .course-figure canvas").count()).toBeGreaterThanOrEqual(1);
      const points = sampleFile(name, "log.gpx")
        .match(/<trkpt/g)!
        .length.toLocaleString("en-GB");
      expect(await page.locator(".head .what").textContent()).toContain(`of ${points} points used`);
      await page.getByRole("link", { name: "Logbook", exact: true }).click();
    }
  }));

test("log and brief dropped together give the sheet, told apart by content and not by name", () =>
  on(async ({ page }) => {
    await drop(page, [
      { name: "first.dat", text: sampleFile("calm-and-tidy", "brief.yaml") },
      { name: "second.dat", text: sampleFile("calm-and-tidy", "log.gpx") },
    ]);
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(
      parse(sampleFile("calm-and-tidy", "brief.yaml")).title,
    );
    expect(await page.locator("#log").textContent()).toContain("second.dat");
  }));

test("a log without a brief gives fitted courses, said to show straightness and not deviation", () =>
  on(async ({ page }) => {
    await drop(page, [{ name: "log.gpx", text: sampleFile("calm-and-tidy", "log.gpx") }]);
    await sheetStands(page);
    expect(await page.locator(".head .what").textContent()).toContain("straightness, not deviation");
    expect(await page.locator(".lineup tbody tr").count()).toBeGreaterThan(0);
  }));

test("a log without times is compared in space, and what needs time is said to be unknown", () =>
  on(async ({ page }) => {
    const untimed = sampleFile("calm-and-tidy", "log.gpx").replace(/<time>[^<]*<\/time>/g, "");
    await drop(page, [
      { name: "untimed.gpx", text: untimed },
      { name: "brief.yaml", text: sampleFile("calm-and-tidy", "brief.yaml") },
    ]);
    await sheetStands(page);
    expect(await page.locator(".head .what").textContent()).toContain("the log gives no times");
    expect(await page.locator(".facts").first().textContent()).toContain("cannot tell");
    expect(await page.locator("body").textContent()).not.toMatch(/NaN|undefined|Invalid/);
  }));

/** Each trackpoint of the sample stands on a line of its own. */
const lines = sampleFile("calm-and-tidy", "log.gpx").split("\n");
const isPoint = (line: string) => line.includes("<trkpt");
const part = (keep: (point: number) => boolean) => {
  let point = -1;
  return lines.filter((line) => !isPoint(line) || keep(++point)).join("\n");
};

test("the two halves of a flight, recorded by two files, give one sheet", () =>
  on(async ({ page }) => {
    await drop(page, [
      { name: "second.gpx", text: part((i) => i >= 1200) },
      { name: "first.gpx", text: part((i) => i < 1300) },
      { name: "brief.yaml", text: sampleFile("calm-and-tidy", "brief.yaml") },
    ]);
    await sheetStands(page);
    expect(await page.locator(".head .what").textContent()).toContain("01:12 to 01:51 UTC");
    expect(await page.locator(".ex h2").first().textContent()).toContain("Course 241°M");
  }));

test("a log of two flights shows one, and the other by one click", () =>
  on(async ({ page }) => {
    const points = lines.filter(isPoint);
    const standing = Array.from({ length: 120 }, (_, i) =>
      points[0]!.replace(
        /T\d\d:\d\d:\d\d/,
        `T05:${String(10 + Math.floor(i / 60))}:${String(i % 60).padStart(2, "0")}`,
      ),
    );
    const flown = points.slice(0, 900).map((line) => line.replace("2026-10-17T01", "2026-10-17T05"));
    const later = [...standing, ...flown].join("\n");
    const two = lines.join("\n").replace("</trkseg>", `</trkseg><trkseg>${later}</trkseg>`);
    await drop(page, [{ name: "two-flights.gpx", text: two }]);
    await sheetStands(page);
    const others = page.getByRole("region", { name: "Flights in this log" });
    expect(await others.textContent()).toContain("The log holds 2 flights. This is number 1.");
    await others.getByRole("button", { name: "Show this one" }).click();
    await page.waitForFunction(() => document.querySelector(".head .what")?.textContent?.includes("05:1"));
  }));

test("the log's own route becomes the brief by one click", () =>
  on(async ({ page }) => {
    const brief = parse(sampleFile("calm-and-tidy", "brief.yaml"));
    const fixes = Object.entries<{ lat: number; lon: number }>(brief.fixes);
    const points = fixes.map(
      ([ident, f]) => `<rtept lat="${f.lat}" lon="${f.lon}"><name>${ident}</name></rtept>`,
    );
    const route = `<rte><name>Round the vale</name>${points.join("")}</rte>`;
    const log = sampleFile("calm-and-tidy", "log.gpx").replace(/<trk>/, `${route}<trk>`);
    await drop(page, [{ name: "routed.gpx", text: log }]);
    await page.getByRole("button", { name: "Take it as the brief" }).click();
    await page.waitForFunction(() => /the route in/.test(document.querySelector(".what")?.textContent ?? ""));
    await page.waitForSelector("#content[aria-busy=false]"); // the sheet grows part by part
    // A leg between each two neighbours of the route.
    expect(await page.locator(".lineup tbody tr").count()).toBe(fixes.length - 1);
  }));

const log = () => sampleFile("calm-and-tidy", "log.gpx");
const goodBrief = () => sampleFile("calm-and-tidy", "brief.yaml");

const BAD: readonly (readonly [string, () => { name: string; text: string }[], RegExp])[] = [
  ["a text that is not XML", () => [{ name: "notes.gpx", text: "met at the field\n" }], /notes\.gpx/],
  ["XML that is not GPX", () => [{ name: "page.gpx", text: "<html><body/></html>" }], /page\.gpx/],
  [
    "a GPX without points",
    () => [{ name: "empty.gpx", text: '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"/>' }],
    /empty\.gpx/,
  ],
  ["a brief without a log", () => [{ name: "brief.yaml", text: goodBrief() }], /brief\.yaml/],
  [
    "a brief with an unknown key",
    () => [
      { name: "log.gpx", text: log() },
      { name: "brief.yaml", text: `${goodBrief()}\ncuorse: 218\n` },
    ],
    /brief\.yaml.*cuorse/s,
  ],
  [
    "a brief with a course of 400",
    () => [
      { name: "log.gpx", text: log() },
      { name: "brief.yaml", text: goodBrief().replace(/course: \d+/, "course: 400") },
    ],
    /brief\.yaml.*400/s,
  ],
];

const NOTHING_OPENS = BAD.slice(0, 4);
const A_SHEET_OPENS = BAD.slice(4);

async function isSaid(page: Page, words: RegExp): Promise<void> {
  // what could not be opened is said in passing, what stands on the sheet but is doubtful above it for good
  await page.waitForSelector(".notices p, .beware p");
  const said = (await page.locator("[role=alert], .beware").allTextContents()).join("\n");
  expect(said).toMatch(words);
  expect(said, "no record, code or trace in a message").not.toMatch(/[{}]|undefined|\bat \w+ \(|Error:/);
}

test("files that give no sheet are said in words, one after the other, and a sample still opens afterwards", () =>
  on(async ({ page }) => {
    const alert = page.getByRole("alert");
    for (const [what, files, words] of NOTHING_OPENS) {
      await drop(page, files());
      await expect.poll(() => alert.textContent(), { message: what }).toMatch(words);
      await isSaid(page, words);
      expect(await page.locator("h1").textContent()).toMatch(/^Hindtrack reads/);
    }
    await openSample(page, "Calm and tidy");
    expect(await alert.textContent()).toBe("");
  }));

test.each(A_SHEET_OPENS)("%s is said in words, and a sample still opens afterwards", (_, files, words) =>
  on(async ({ page }) => {
    await drop(page, files());
    await page.waitForSelector(".notices p, .beware p");
    if (await page.locator(".beware").isVisible()) await sheetStands(page);
    await isSaid(page, words);
    // What is readable of a brief is kept, and the sheet stands on it: back to where files are opened.
    await page.getByRole("link", { name: "Logbook", exact: true }).click();
    await openSample(page, "Calm and tidy");
    expect(await page.getByRole("alert").textContent()).toBe("");
  }),
);

test("a table that does not tell its columns is read when the reader says which is which, also after a reload", () =>
  on(async ({ page }) => {
    const rows = lines.filter(isPoint).map((point) => {
      const [, lat, lon, ele, time] = /lat="([^"]+)" lon="([^"]+)".*<ele>([^<]+).*<time>([^<]+)/.exec(point)!;
      return [time, "<b>7</b>", lat, lon, ele].join(";").replaceAll(".", ",");
    });
    await drop(page, [{ name: "bare.csv", text: rows.join("\n").replaceAll(",000Z", "Z") }]);
    const question = page.getByRole("region", { name: "Which column is which?" });
    expect(await question.textContent()).toContain("<b>7</b>");
    const read = question.getByRole("button", { name: "Read the table" });
    expect(await read.isDisabled()).toBe(true);
    for (const [at, name] of [
      [1, "time, or date and time"],
      [3, "latitude"],
      [4, "longitude"],
      [5, "altitude, m"],
    ] as const)
      await question.getByLabel(`Column ${at}`).selectOption({ label: name });
    await read.click();
    await sheetStands(page);
    expect(await question.count()).toBe(0);
    const points = `of ${rows.length.toLocaleString("en-GB")} points used`;
    expect(await page.locator(".head .what").textContent()).toContain(points);
    await page.waitForTimeout(300);
    await page.reload();
    await sheetStands(page);
    expect(await page.locator(".head .what").textContent()).toContain(points);
  }));

test("a reload loses neither the sheet nor the remark", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    const title = await page.locator("h1").textContent();
    await page.getByRole("textbox", { name: "Remarks" }).fill("Held the last course well.");
    // The bytes are kept after the sheet stands: wait until they are.
    await page.waitForFunction(async () => (await indexedDB.databases()).some((d) => d.name === "hindtrack"));
    await page.waitForTimeout(300);
    await page.reload();
    await sheetStands(page);
    expect(await page.locator("h1").textContent()).toBe(title);
    expect(await page.getByRole("textbox", { name: "Remarks" }).inputValue()).toBe(
      "Held the last course well.",
    );
  }));

test("the sheet is saved as a document that holds the remark, and as CSV and GeoJSON", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    await page.getByRole("textbox", { name: "Remarks" }).fill("Well held.");
    const text = async (button: string) => (await saved(page, button)).text;
    const document = JSON.parse(await text("document (JSON)"));
    expect(document.format).toBe("hindtrack-debrief");
    expect(document.remarks).toEqual([{ exercise: null, text: "Well held." }]);
    expect(JSON.parse(await text("map (GeoJSON)")).type).toBe("FeatureCollection");
    const points = sampleFile("calm-and-tidy", "log.gpx").match(/<trkpt/g)!.length;
    const dropped = document.log.points - document.log.used;
    const table = (await text("points (CSV)")).trim().split("\n");
    expect(table).toHaveLength(points - dropped + 1);
    // Left of course is a number below zero, and a spreadsheet must read it as a number.
    expect(table.join("\n")).toMatch(/,-0\.\d+,/);
    expect(table.join("\n")).not.toContain("'-");
  }));

test("work under way can be cancelled, and the page stays where it was", () =>
  on(async ({ page }) => {
    // Far more points than a flight has, so that there is time to press the button.
    const point = (i: number) =>
      `<trkpt lat="${(35 + i * 1e-6).toFixed(6)}" lon="-172.3"><time>${new Date(1.79e12 + i * 1000).toISOString()}</time></trkpt>`;
    const points = Array.from({ length: 300_000 }, (_, i) => point(i)).join("");
    const text = `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points}</trkseg></trk></gpx>`;
    await drop(page, [{ name: "long.gpx", text }]);
    await page.getByRole("button", { name: "Cancel" }).click();
    expect(await page.getByRole("status").textContent()).toBe("");
    expect(await page.locator("h1").textContent()).toMatch(/^Hindtrack reads/);
  }));

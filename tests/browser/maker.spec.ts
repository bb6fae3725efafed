/** A brief is made on the page: from nothing but a log to a graded sheet, with everything typed checked as it is typed. */
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parse } from "yaml";
import { flyScenario } from "../../src/simulator/index.ts";
import { legible } from "./legible.ts";
import {
  drop,
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

async function on(
  work: (watched: Watched) => Promise<void>,
  options: BrowserContextOptions = {},
): Promise<void> {
  const watched = await watchedPage(browser, options);
  try {
    await work(watched);
    expect(watched.elsewhere, "requests that left the local server").toEqual([]);
    expect(watched.trouble, "console errors and broken policies").toEqual([]);
  } finally {
    await watched.close();
  }
}

/** A course of 282 to TARNO and a hold there, inbound 247, right turns: as that sample was flown. */
const HOLD = sampleFile("hold-direct-well-flown", "log.gpx");
const openLog = async (page: Page, text = HOLD): Promise<void> => {
  await drop(page, [{ name: "log.gpx", text }]);
  await sheetStands(page);
};
const maker = (page: Page) => page.getByRole("region", { name: "The brief: what was meant" });
const openMaker = async (page: Page) => {
  await page.getByRole("button", { name: /make a brief|Change the brief/ }).click();
  return maker(page);
};
const lineUp = (page: Page): Promise<string> => page.locator(".lineup tbody").textContent().then(String);
/** Until the sheet says so: it follows by itself. */
const sheetSays = (page: Page, words: RegExp): Promise<unknown> =>
  page.waitForFunction(
    ([source]) =>
      new RegExp(source!, "s").test(document.querySelector<HTMLElement>(".lineup")?.textContent ?? ""),
    [words.source],
  );

/** Where the flight first was nearest to TARNO, as a pixel on the plan: where a pilot would click. */
async function clickTarno(page: Page): Promise<void> {
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

test("from an empty logbook, a log and the knowledge of one course and one hold to a graded sheet, in under three minutes", () =>
  on(async ({ page }) => {
    const began = Date.now();
    await openLog(page);
    const brief = await openMaker(page);
    const against = brief.getByRole("combobox", { name: "Held against" });
    expect(await against.inputValue(), "nobody has chosen a standard").toBe("");
    await against.selectOption("instrument-rating-us");
    await brief.getByRole("button", { name: "a course", exact: true }).click();
    await brief.getByRole("textbox", { name: "Course" }).fill("282");
    await brief.getByRole("combobox", { name: "Fix", exact: true }).fill("TARNO");
    await brief.getByRole("button", { name: "Pick on the plan: Fix of exercise 1" }).click();
    await clickTarno(page);
    await brief.getByRole("button", { name: "a hold", exact: true }).click();
    await brief.getByRole("combobox", { name: "Fix", exact: true }).fill("TARNO");
    await brief.getByRole("textbox", { name: "Inbound course" }).fill("247");
    await sheetSays(page, /Course 282°M to TARNO.*(met|cannot tell).*Hold at TARNO, inbound 247°M/);
    expect(Date.now() - began).toBeLessThan(180_000);
    await brief.getByRole("button", { name: "Done" }).click();
    expect((await page.locator(".ex h2").allInnerTexts()).slice(0, 2)).toEqual([
      "Course 282°M to TARNO",
      "Hold at TARNO, inbound 247°M, right turns",
    ]);
    expect(await page.locator("#exercise-1 .no").textContent()).toMatch(/met|cannot tell/);
    // and it is there after a reload, with nobody having saved anything
    await page.reload();
    await sheetStands(page);
    expect(await lineUp(page)).toContain("Course 282°M to TARNO");
  }));

test("what was flown becomes what was meant by one click each, on the sheet and in the maker", () =>
  on(async ({ page }) => {
    await openLog(page);
    await page.locator("#exercise-2").getByRole("button", { name: "This hold was meant" }).click();
    const brief = maker(page);
    await sheetSays(page, /Hold at P1, inbound 247°M, right turns/);
    await brief.getByRole("button", { name: "Add Straight on 282°M to the brief" }).click();
    await sheetSays(page, /Course 282°M to P1.*Hold at P1/);
    const ident = brief.getByRole("textbox", { name: "Ident", exact: true });
    expect(await ident.count(), "the course leads to the fix of the hold").toBe(1);
    await ident.fill("TARNO");
    await ident.press("Enter");
    await sheetSays(page, /Course 282°M to TARNO.*Hold at TARNO/);
  }));

test("the sheet stays where the reader is while it follows", () =>
  on(async ({ page }) => {
    await openSample(page, "A hold, well flown");
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: /Hold at TARNO/ }).click();
    const inbound = brief.getByRole("textbox", { name: "Inbound course" });
    await inbound.scrollIntoViewIfNeeded();
    const before = (await inbound.boundingBox())!.y;
    await inbound.fill("250");
    await sheetSays(page, /inbound 250°M/);
    await page.waitForSelector('main[aria-busy="false"]');
    expect(Math.abs((await inbound.boundingBox())!.y - before)).toBeLessThan(30); // less than a line
    expect(await inbound.evaluate((field) => field === document.activeElement)).toBe(true);
  }));

test("a wrong value is told beside its field, the rest works, and steps go back and forth", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: /Course 241°M to TARNO/ }).click();
    const course = brief.getByRole("textbox", { name: "Course" });
    expect(await brief.locator(".note").first().textContent()).toBe(
      "243.5°T, variation 2.5°E of the station",
    );
    await course.fill("400");
    const told = await course.getAttribute("aria-describedby");
    expect(await page.locator(`#${told!.split(" ")[0]}`).textContent()).toContain("0 to 360 degrees");
    await page.waitForFunction(() => document.querySelectorAll(".lineup tbody tr").length === 3);
    expect(await page.getByRole("alert").textContent()).toBe("");
    await course.fill("243.5T");
    await sheetSays(page, /Course 243\.5°T to TARNO/);
    let steps = 0;
    for (; (await course.inputValue()) !== "241"; steps++) await course.press("Control+z");
    await sheetSays(page, /Course 241°M to TARNO/);
    for (; steps > 0; steps--) await brief.getByRole("button", { name: "Redo" }).click();
    await sheetSays(page, /Course 243\.5°T to TARNO/);
  }));

test("times are set by dragging on the chart of the flight, and typed", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: /Course 270°M from TARNO/ }).click();
    const chart = brief.getByRole("img", { name: /The flight along time/ });
    await chart.scrollIntoViewIfNeeded();
    const box = (await chart.boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.3, box.y + 60);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.5, box.y + 60, { steps: 5 });
    await page.mouse.up();
    const from = brief.getByRole("textbox", { name: "From, UTC" });
    const to = brief.getByRole("textbox", { name: "To, UTC" });
    expect(await from.inputValue()).toMatch(/^01:\d\d:\d\d$/);
    expect((await to.inputValue()) > (await from.inputValue())).toBe(true);
    await from.fill("01:22:00");
    await brief.getByRole("slider", { name: "Ends" }).press("ArrowRight");
    await page.waitForFunction(() =>
      /^01:2[2-9]/.test(document.querySelector(".lineup tbody tr:nth-child(2) .t")?.textContent ?? ""),
    );
    await brief.getByRole("button", { name: "Look for it instead" }).click();
    expect(await from.inputValue()).toBe("");
  }));

test("the brief is saved as YAML and loaded again; kept as a template it serves another flight, after a reload", () =>
  on(async ({ page }) => {
    await openSample(page, "Calm and tidy");
    let brief = await openMaker(page);
    const { text } = await saved(page, "Save the brief (YAML)");
    expect(parse(text)).toEqual(parse(sampleFile("calm-and-tidy", "brief.yaml")));
    await brief.getByText("Templates").click();
    await brief.getByRole("textbox", { name: "Name" }).fill("Radials");
    await brief.getByRole("button", { name: "Keep this brief as a template" }).click();
    await brief.getByRole("button", { name: "Take the template Radials" }).waitFor();
    await page.goto(new URL("/", page.url()).href);
    await page.reload();
    await page.waitForSelector("h1");
    await drop(page, [
      { name: "again.gpx", text: sampleFile("strong-crosswind-badly-corrected", "log.gpx") },
    ]);
    await sheetStands(page);
    brief = await openMaker(page);
    await brief.getByText("Templates").click();
    await brief.getByRole("button", { name: "Take the template Radials" }).click();
    await sheetSays(page, /Course 241°M to TARNO/);
    await brief.getByRole("textbox", { name: "Title" }).fill("Another");
    await brief
      .locator("input[type=file][accept]")
      .setInputFiles({ name: "own.yaml", mimeType: "text/yaml", buffer: Buffer.from(text) });
    await expect
      .poll(() => brief.getByRole("textbox", { name: "Title" }).inputValue())
      .toBe(parse(text).title);
  }));

test("a list of points is kept in this browser, searched by ident, and offered to fields", () =>
  on(async ({ page }) => {
    await openLog(page);
    let brief = await openMaker(page);
    const list =
      "ident,lat,lon,kind,declination\nTARNO,35.6,172.3,vor,2.5\nTARNO,12,40,ndb,\nBELVO,35.668,172.069,,\n";
    await brief
      .locator("input[type=file][multiple]")
      .setInputFiles({ name: "vale.csv", mimeType: "text/csv", buffer: Buffer.from(list) });
    await brief.getByText("vale.csv: 3 points, kept in this browser.").waitFor();
    await page.reload();
    await sheetStands(page);
    brief = await openMaker(page);
    await brief.getByText("vale.csv: 3 points.").waitFor();
    await brief.getByRole("textbox", { name: "Find a point by its ident" }).fill("tar");
    const found = brief.getByRole("list", { name: "Points found" }).getByRole("listitem");
    expect(await found.allInnerTexts()).toEqual([
      expect.stringMatching(/^TARNO vor, 35\.600, 172\.300, \d NM from the flight, from vale\.csv$/),
      expect.stringMatching(/^TARNO ndb, 12\.000, 40\.000, \d+ NM from the flight, from vale\.csv$/),
    ]);
    await found.first().getByRole("button").click();
    expect(await brief.getByRole("textbox", { name: "Latitude, longitude" }).inputValue()).toBe(
      "35.6, 172.3",
    );
    await brief.getByRole("button", { name: "a leg between two fixes" }).click();
    await brief.getByRole("combobox", { name: "From fix" }).fill("TARNO");
    await brief.getByRole("combobox", { name: "To fix" }).fill("BELVO");
    await sheetSays(page, /Leg TARNO to BELVO/);
    await brief
      .locator("input[type=file][multiple]")
      .setInputFiles({ name: "bad.csv", mimeType: "text/csv", buffer: Buffer.from("a;b\n1;2\n3;4\n") });
    await brief.getByText(/bad\.csv.*ident, lat and lon/).waitFor();
  }));

test("a list dropped on the page stays, and the final to its runway is found and taken as meant", () =>
  on(async ({ page }) => {
    const { gpx, brief: flown } = flyScenario("approach-tidy-precision", 5001);
    const { runway } = parse(flown!).exercises.find((e: object) => "approach" in e).approach;
    const row = ["LIND 22", ...runway.threshold, "runway", runway.elevation_ft, ...runway.end].join(",");
    await drop(page, [
      { name: "fields.csv", text: `ident,lat,lon,kind,elevation,end lat,end lon\n${row}\n` },
    ]);
    await page.getByText("fields.csv: 1 point, 1 landing direction, kept in this browser.").waitFor();
    await drop(page, [{ name: "final.gpx", text: gpx }]);
    await sheetStands(page);
    await sheetSays(page, /Approach.*LIND 22/);
    await page.getByRole("button", { name: "This approach was meant" }).click();
    await maker(page)
      .getByRole("button", { name: /1 Approach runway LIND 22/ })
      .waitFor();
    await page.waitForFunction(
      () => document.querySelector(".lineup caption")?.textContent === "The lesson in flown order",
    );
  }));

test.each([
  ["vale.gpx", '<gpx version="1.1"><wpt lat="35.6" lon="172.3"><name>TARNO</name></wpt></gpx>'],
  [
    "vale.kml",
    "<kml><Document><Placemark><name>TARNO</name><Point><coordinates>172.3,35.6</coordinates></Point></Placemark></Document></kml>",
  ],
])("points dropped as %s stay as a list, beside a log too", (name, text) =>
  on(async ({ page }) => {
    await drop(page, [
      { name: "log.gpx", text: HOLD },
      { name, text },
    ]);
    await page.getByText(`${name}: 1 point, kept in this browser.`).waitFor();
    await sheetStands(page);
    const brief = await openMaker(page);
    await brief.getByText(`${name}: 1 point.`).waitFor();
  }),
);

test("what is half typed is there again after a reload", () =>
  on(async ({ page }) => {
    await openLog(page);
    let brief = await openMaker(page);
    await brief.getByRole("button", { name: "a hold", exact: true }).click();
    await brief.getByRole("textbox", { name: "Inbound course" }).fill("24x");
    await page.reload();
    await sheetStands(page);
    brief = await openMaker(page);
    await brief.getByRole("button", { name: "1 Hold" }).click();
    expect(await brief.getByRole("textbox", { name: "Inbound course" }).inputValue()).toBe("24x");
  }));

test("without a pointer: a cross on the plan is moved by keys and picks a point of the log", () =>
  on(async ({ page }) => {
    const named = HOLD.replace("<trk>", '<wpt lat="35.6" lon="172.3"><name>TARNO</name></wpt><trk>');
    await openLog(page, named);
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: "Pick a point on the plan" }).click();
    const plan = page.getByRole("application", { name: /The flight from above/ });
    await plan.focus();
    const whole = await plan.locator(".scale-bar path").getAttribute("d");
    await page.keyboard.press("+");
    expect(await plan.locator(".scale-bar path").getAttribute("d")).not.toBe(whole);
    await page.keyboard.press("0");
    await page.keyboard.press("ArrowLeft");
    expect(await plan.locator("path.dim").count()).toBe(1);
    const steps = await plan.evaluate((svg) => {
      const read = (d: string) =>
        d
          .split(/[MHV ]/)
          .filter(Boolean)
          .map(Number);
      const [left, y] = read(svg.querySelector("path.dim")!.getAttribute("d")!);
      const dot = svg.querySelector(".known-point circle")!;
      return [Number(dot.getAttribute("cx")) - left! - 12, Number(dot.getAttribute("cy")) - y!].map((px) =>
        Math.round(px / 8),
      );
    });
    for (const [i, keys] of [
      ["ArrowRight", "ArrowLeft"],
      ["ArrowDown", "ArrowUp"],
    ].entries())
      for (let n = 0; n < Math.abs(steps[i]!); n++)
        await page.keyboard.press(steps[i]! > 0 ? keys[0]! : keys[1]!);
    await page.keyboard.press("Enter");
    expect(await brief.getByRole("textbox", { name: "Ident", exact: true }).inputValue()).toBe("TARNO");
  }));

test("wide and narrow, light and dark: the maker can be read by everybody", () =>
  on(
    async ({ page }) => {
      await openSample(page, "A hold, well flown");
      const brief = await openMaker(page);
      await brief.getByRole("button", { name: /Hold at TARNO/ }).click();
      await brief.getByText("Templates").click();
      await brief.getByRole("textbox", { name: "Inbound course" }).fill("24x");
      await brief.getByRole("textbox", { name: "Find a point by its ident" }).fill("tar");
      await legible(page, "the maker");
    },
    { bypassCSP: true },
  ));

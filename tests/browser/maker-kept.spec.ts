/** What the maker keeps and takes up again: briefs as files and templates, lists of points, what is half typed. */
import { expect, test } from "vitest";
import { parse } from "yaml";
import { flyScenario } from "../../src/simulator/index.ts";
import { HOLD, lineUp, maker, openLog, openMaker, sheetSays } from "./maker.ts";
import { drop, openSample, pagesOfOneBrowser, sampleFile, saved, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

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
      expect.stringMatching(/^TARNO VOR, 35\.600, 172\.300, \d NM from the flight, from vale\.csv$/),
      expect.stringMatching(/^TARNO NDB, 12\.000, 40\.000, \d+ NM from the flight, from vale\.csv$/),
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

test("a reload a moment after the last letter: the sheet is of the brief that was typed", () =>
  on(async ({ page }) => {
    await openSample(page, "A hold, well flown");
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: /Hold at TARNO/ }).click();
    await brief.getByRole("textbox", { name: "Inbound course" }).fill("250");
    await page.reload();
    await sheetStands(page);
    await sheetSays(page, /inbound 250°M/);
    await page.reload();
    await sheetStands(page);
    expect(await lineUp(page), "and it was kept").toContain("inbound 250°M");
  }));

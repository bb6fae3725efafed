/** The maker under hands: what is clicked is done, what is added is gone on with, what was dragged is stepped back. */
import { expect, test } from "vitest";
import { HOLD, lineUp, openLog, openMaker, sheetSays } from "./maker.ts";
import { pagesOfOneBrowser } from "./page.ts";

const on = pagesOfOneBrowser();

test("a click right after a field is left empty is done: no message moves the button, and where one does the press counts", () =>
  on(async ({ page }) => {
    await openLog(page);
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: "a hold", exact: true }).click();
    await brief.getByRole("combobox", { name: "Fix", exact: true }).focus();
    const button = brief.getByRole("button", { name: "a course", exact: true });
    const before = (await button.boundingBox())!;
    await page.mouse.move(before.x + 5, before.y + before.height / 2);
    await page.mouse.down();
    await brief.getByText("Needed here.").waitFor();
    expect((await button.boundingBox())!.y, "room was kept for the message").toBe(before.y);
    // whatever else may push it away between the press and its end
    await brief.locator(".makings").evaluate((list) => {
      (list as HTMLElement).style.paddingBottom = "70px";
    });
    expect((await button.boundingBox())!.y).toBe(before.y + 70);
    await page.mouse.up();
    await brief.getByRole("button", { name: "2 Course" }).waitFor();
    expect(await brief.locator(".making").count(), "and it counts once").toBe(2);
  }));

test("a press that is drawn away from its button is no click", () =>
  on(async ({ page }) => {
    await openLog(page);
    const brief = await openMaker(page);
    const box = (await brief.getByRole("button", { name: "a course", exact: true }).boundingBox())!;
    await page.mouse.move(box.x + 5, box.y + 5);
    await page.mouse.down();
    await page.mouse.move(box.x + 5, box.y + 60, { steps: 3 });
    await page.mouse.up();
    await page.waitForTimeout(100);
    expect(await brief.locator(".making").count()).toBe(0);
  }));

test("a VOR of a list and the log's waypoint of the same ident are both offered, told apart, and the VOR is taken", () =>
  on(async ({ page }) => {
    const named = HOLD.replace("<trk>", '<wpt lat="35.6" lon="172.3"><name>TARNO</name></wpt>\n<trk>');
    expect(named).not.toBe(HOLD);
    await openLog(page, named);
    const brief = await openMaker(page);
    const list = "ident,lat,lon,kind,declination\nTARNO,35.6,172.3,vor,2.5\n";
    await brief
      .locator("input[type=file][multiple]")
      .setInputFiles({ name: "vale.csv", mimeType: "text/csv", buffer: Buffer.from(list) });
    await brief.getByText("vale.csv: 1 point, kept in this browser.").waitFor();
    // typed alone, the ident means the one that says more, and the field says which
    await brief.getByRole("button", { name: "a hold", exact: true }).click();
    const fix = brief.getByRole("combobox", { name: "Fix", exact: true });
    await fix.fill("TARNO");
    await brief.getByText("VOR of vale.csv; another is found under Points").waitFor();
    await brief.getByRole("textbox", { name: "Find a point by its ident" }).fill("tarno");
    const found = brief.getByRole("list", { name: "Points found" }).getByRole("listitem");
    expect(await found.allInnerTexts()).toEqual([
      expect.stringMatching(/^TARNO VOR, 35\.600, 172\.300, \d NM from the flight, from vale\.csv$/),
      expect.stringMatching(/^TARNO waypoint, 35\.600, 172\.300, \d NM from the flight, from the log$/),
    ]);
    const kind = brief.getByRole("combobox", { name: "Kind" });
    await found.nth(1).getByRole("button").click();
    expect(await kind.inputValue()).toBe("");
    await brief.getByRole("textbox", { name: "Find a point by its ident" }).fill("tarno");
    await found.first().getByRole("button").click();
    expect(await kind.inputValue()).toBe("vor");
    expect(await brief.getByRole("textbox", { name: "Declination, ° east" }).inputValue()).toBe("2.5");
  }));

test("an altitude typed as 3.900 is three thousand nine hundred feet, and said so; 3.9 is asked for", () =>
  on(async ({ page }) => {
    await openLog(page);
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: "Add Straight on 282°M to the brief" }).click();
    const altitude = brief.getByRole("textbox", { name: "Altitude, ft" });
    await altitude.fill("3.900");
    await brief.getByText("3,900 ft", { exact: true }).waitFor();
    await sheetSays(page, /Course 282°M to P1/);
    await page.waitForFunction(() =>
      document.querySelector("#exercise-1")?.textContent?.includes("3,900 ft"),
    );
    await altitude.fill("3.9");
    await brief.getByText("3.9 ft? Write whole feet, as in 4500.").waitFor();
    expect(await lineUp(page)).not.toContain("4 ft");
    expect(await brief.locator(".making .outcome").textContent()).toBe("waits for its fields");
  }));

test("what is added is gone on with in its first field; Ctrl Z steps one drag on the chart back", () =>
  on(async ({ page }) => {
    await openLog(page);
    const brief = await openMaker(page);
    await brief.getByRole("button", { name: "Add Straight on 282°M to the brief" }).click();
    const course = brief.getByRole("textbox", { name: "Course" });
    await expect.poll(() => course.evaluate((field) => field === document.activeElement)).toBe(true);
    await brief.getByRole("button", { name: "a hold", exact: true }).click();
    const fix = brief.getByRole("combobox", { name: "Fix", exact: true });
    await expect.poll(() => fix.evaluate((field) => field === document.activeElement)).toBe(true);
    const chart = brief.locator(".times-chart");
    await chart.scrollIntoViewIfNeeded();
    const { x, y } = (await chart.boundingBox())!;
    const words = brief.locator(".times p").first();
    const drag = async (from: number, to: number) => {
      await page.mouse.move(x + from, y + 80);
      await page.mouse.down();
      await page.mouse.move(x + to, y + 80, { steps: 4 });
      await page.mouse.up();
      return words.textContent();
    };
    const none = await words.textContent();
    const first = await drag(100, 200);
    const second = await drag(150, 300);
    expect(new Set([none, first, second]).size).toBe(3);
    await page.keyboard.press("Control+z");
    expect(await words.textContent()).toBe(first);
    await page.keyboard.press("Control+z");
    expect(await words.textContent()).toBe(none);
    await page.keyboard.press("Control+Shift+Z");
    expect(await words.textContent()).toBe(first);
  }));

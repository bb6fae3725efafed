/** A brief is made on the page: from nothing but a log to a graded sheet, with everything typed checked as it is typed. */
import { expect, test } from "vitest";
import { legible } from "./legible.ts";
import { clickTarno, HOLD, lineUp, maker, openLog, openMaker, sheetSays } from "./maker.ts";
import { openSample, pagesOfOneBrowser, sheetStands } from "./page.ts";

const on = pagesOfOneBrowser();

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

test("points are typed by keys alone: each field leads to the next, and every letter lands where it was meant", () =>
  on(async ({ page }) => {
    await openLog(page);
    const brief = await openMaker(page);
    for (const [ident, place] of [
      ["MORSU", "35.7, 172.34"],
      ["KESTI", "35.7, 172.5"],
    ] as const) {
      await brief.getByRole("button", { name: "Type a new point" }).press("Enter");
      const field = brief.getByRole("textbox", { name: "Ident", exact: true }).last();
      await page.waitForFunction((it) => it === document.activeElement, await field.elementHandle());
      await page.keyboard.type(ident);
      await page.keyboard.press("Tab");
      await page.keyboard.type(place);
      await page.keyboard.press("Tab");
    }
    const typed = (name: string) =>
      brief
        .getByRole("textbox", { name, exact: true })
        .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
    expect(await typed("Ident")).toEqual(["MORSU", "KESTI"]);
    expect(await typed("Latitude, longitude")).toEqual(["35.7, 172.34", "35.7, 172.5"]);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("SELECT");
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

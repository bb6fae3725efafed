/** Files with strange names: whatever is in a name is shown as text, saved under a tame one, and breaks no layout. */
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drop, launch, sampleFile, saved, sheetStands, watchedPage } from "./page.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

const MARKUP = "<img src=x onerror=alert(1)>";
const NAMES: readonly (readonly [string, string])[] = [
  ["markup", `${MARKUP}.gpx`],
  ["an end of a script", "</script><script>alert(1)</script>.gpx"],
  ["300 characters", `${"long".repeat(75)}.gpx`],
  ["300 characters with spaces", `${"a word ".repeat(42)}.gpx`],
  ["writing from right to left", "\u202eגל \u05d0\u05d1\u05d2 xpg.gpx"],
  ["a line break", "first line\nsecond line\r\nthird.gpx"],
  ["emoji", "🛩️ flight 👩🏽‍✈️.gpx"],
  ["a path and quotes", '..\\..\\"it\'s" & `x` $1.gpx'],
];

/** A point each 3 s is enough: what is flown is not what is looked at. */
const THIN = sampleFile("calm-and-tidy", "log.gpx")
  .split("\n")
  .filter((line, i) => !line.includes("<trkpt") || i % 3 === 0)
  .join("\n");
/** The sample's log with the name inside, the brief with it as title and as ident of a fix. */
const log = (name: string): string => {
  const text = name.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
  return THIN.replace(/<name>[^<]*<\/name>/, `<name>${text}</name>`);
};
const brief = (name: string): string =>
  sampleFile("calm-and-tidy", "brief.yaml")
    .replace(/^title: .*$/m, `title: ${JSON.stringify(name)}`)
    .replaceAll("TARNO", `TARNO${name.replace(/[^a-z]/gi, "").slice(0, 90)}`);

/** Nothing of the name became an element, nothing ran, and nothing is wider than the window. */
async function isTame(page: Page): Promise<void> {
  const found = await page.evaluate(() => ({
    images: document.querySelectorAll("img, [onerror]").length,
    wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
  }));
  expect(found).toEqual({ images: 0, wide: 0 });
}

test.each(NAMES)(
  "%s in the names of files, log and brief: text on the sheet and in the saved page",
  async (_, name) => {
    const { page, trouble, close } = await watchedPage(browser, { viewport: { width: 390, height: 844 } });
    let dialogs = 0;
    page.on("dialog", (dialog) => {
      dialogs++;
      void dialog.dismiss();
    });
    await drop(page, [
      { name, text: log(name) },
      { name: name.replace(/\.gpx$/, ".yaml"), text: brief(name) },
    ]);
    await sheetStands(page);
    expect(await page.locator(".ex").count()).toBeGreaterThan(2);
    await isTame(page);
    await page.setViewportSize({ width: 1280, height: 900 });
    await isTame(page);

    const one = await saved(page, "one page that opens anywhere");
    expect(one.name).toMatch(/^[^\\/:*?"<>|\n\r\u202e]{1,75}\.html$/);
    await close();

    const context = await browser.newContext({ offline: true, viewport: { width: 390, height: 844 } });
    const opened = await context.newPage();
    opened.on("dialog", (dialog) => {
      dialogs++;
      void dialog.dismiss();
    });
    await opened.goto(pathToFileURL(one.path).href);
    await opened.waitForSelector(".ex canvas");
    await isTame(opened);
    expect(dialogs).toBe(0);
    expect(trouble).toEqual([]);
    await context.close();
  },
);

test("the same in the name of a file that is refused: the complaint is text, and the page stays", async () => {
  const { page, trouble, close } = await watchedPage(browser, { viewport: { width: 390, height: 844 } });
  const alert = page.getByRole("alert");
  let before = "";
  for (const [what, name] of NAMES) {
    await drop(page, [{ name, text: `<${MARKUP}` }]);
    const said = async () => String(await alert.textContent());
    await expect
      .poll(async () => (await said()) !== before && (await said()).length > 20, { message: what })
      .toBe(true);
    before = await said();
    await isTame(page);
  }
  expect(trouble).toEqual([]);
  await close();
});

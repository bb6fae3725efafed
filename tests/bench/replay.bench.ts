/** The sheet of a flight of 10,000 points in a real Chromium: frames a second of the replay, and how soon pointing is answered. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { flyScenario, SCENARIOS } from "../../src/simulator/index.ts";
import { served } from "./served.ts";
import type { Line } from "./time.ts";

const POINTS = 10_000;
/** Wanted of the page. */
const FRAMES_PER_S = 50;
const ANSWER_MS = 50;
const WATCHED_MS = 6000;
const MOVES = 60;
const LESSON = "strong-crosswind-badly-corrected";

/** The lesson flown again and again, a point each half second, cut off at so many. */
function longLog(): string {
  const script = SCENARIOS[LESSON]!.script;
  const { gpx } = flyScenario(LESSON, 1, {
    script: [...script, ...script, ...script],
    logging: { every: 0.5 },
  });
  const [head, ...points] = gpx.split("<trkpt");
  if (points.length < POINTS) throw new Error(`only ${points.length} points`);
  return `${[head, ...points.slice(0, POINTS)].join("<trkpt").replace(/\s*<\/trkseg>[\s\S]*$/, "")}</trkseg></trk></gpx>`;
}

/** Lengths of the frames that the page draws meanwhile, ms. */
const frames = (page: Page): Promise<number[]> =>
  page.evaluate(
    (watched) =>
      new Promise<number[]>((done) => {
        const lengths: number[] = [];
        const start = performance.now();
        let last = start;
        const onward = (now: number) => {
          lengths.push(now - last);
          last = now;
          if (now - start < watched) requestAnimationFrame(onward);
          else done(lengths.slice(1));
        };
        requestAnimationFrame(onward);
      }),
    WATCHED_MS,
  );

/** From pointing at a place of the chart until the answer is painted, ms. */
const answers = (page: Page): Promise<number[]> =>
  page.evaluate(async (moves) => {
    const canvas = document.querySelector<HTMLCanvasElement>("#exercise-1 .course-figure canvas")!;
    const box = canvas.getBoundingClientRect();
    const taken: number[] = [];
    for (let k = 0; k < moves; k++) {
      const clientX = box.left + 80 + ((box.width - 140) * ((k * 7) % moves)) / moves;
      const start = performance.now();
      canvas.dispatchEvent(
        new PointerEvent("pointermove", { clientX, clientY: box.top + 60, bubbles: true }),
      );
      await new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done, 0)));
      taken.push(performance.now() - start);
    }
    return taken;
  }, MOVES);

const at = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;

export default (): Promise<Line[]> =>
  served(async (browser, address) => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(address);
    const brief = readFileSync(new URL(`../../samples/${LESSON}/brief.yaml`, import.meta.url));
    await page
      .locator('input[type="file"]')
      .first()
      .setInputFiles([
        { name: "long.gpx", mimeType: "text/xml", buffer: Buffer.from(longLog()) },
        { name: "brief.yaml", mimeType: "text/yaml", buffer: brief },
      ]);
    await page.waitForSelector('main[aria-busy="false"] #exercise-1', { timeout: 120_000 });
    await page.locator("#exercise-1 .course-figure").scrollIntoViewIfNeeded();
    const idle = await frames(page);
    const replay = page.locator("#exercise-1 .replay");
    await replay.locator("select").selectOption("20");
    await replay.getByRole("button", { name: "Play" }).click();
    const played = await frames(page);
    await replay.getByRole("button", { name: /Pause|Play/ }).click();
    const answered = await answers(page);
    const perSecond = (lengths: readonly number[]) =>
      (1000 * lengths.length) / lengths.reduce((a, b) => a + b, 0);
    const [still, moving] = [perSecond(idle), perSecond(played)];
    const worst = at(answered, 0.95);
    return [
      {
        text: `replay at 20 times, ${POINTS} points: ${moving.toFixed(0)} frames/s (wanted ${FRAMES_PER_S}; the page at rest ${still.toFixed(0)}), frames at the 95 % point ${at(played, 0.95).toFixed(0)} ms`,
        ok: moving >= FRAMES_PER_S,
      },
      {
        text: `pointing answered in ${at(answered, 0.5).toFixed(0)} ms, 95 % within ${worst.toFixed(0)} ms (wanted ${ANSWER_MS})`,
        ok: worst <= ANSWER_MS,
      },
    ];
  });

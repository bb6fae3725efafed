/** A log of 100,000 points, made in the page itself, and what the page does while it reads it. */
import type { Page } from "playwright-core";

export const POINTS = 100_000;
/** The longest task of the page's own thread that is not felt, ms: wanted of the page. */
export const MOST_MS = 100;

interface Watch {
  readonly log: File;
  readonly tasks: number[];
  readonly shares: number[];
}
type Watching = Window & { readonly watch: Watch };

/** Straights of five minutes with turns of 90° between them in a wind, ten points a second. */
export async function makeLog(page: Page): Promise<void> {
  await page.evaluate((points) => {
    const rows = ['<gpx version="1.1"><trk><name>Long</name><trkseg>\n'];
    let [latitude, longitude, heading] = [35.6, 172.3, 40];
    for (let i = 0; i < points; i++) {
      if ((i / 10) % 330 > 300) heading += 0.3;
      const angle = (heading * Math.PI) / 180;
      latitude += (51 * Math.cos(angle) - 5) / 10 / 111_000;
      longitude += (51 * Math.sin(angle) + 3) / 10 / 90_000;
      const time = new Date(Date.UTC(2026, 9, 17) + i * 100).toISOString();
      rows.push(
        `<trkpt lat="${latitude.toFixed(7)}" lon="${longitude.toFixed(7)}"><ele>900</ele><time>${time}</time></trkpt>\n`,
      );
    }
    const tasks: number[] = [];
    const shares: number[] = [];
    const log = new File([...rows, "</trkseg></trk></gpx>"], "long.gpx");
    Object.assign(window, { watch: { log, tasks, shares } satisfies Watch });
    const watcher = new PerformanceObserver((list) => {
      for (const task of list.getEntries()) tasks.push(task.duration);
    });
    new MutationObserver(() => {
      const share = document.querySelector("progress")?.getAttribute("value");
      if (share && Number(share) !== shares.at(-1)) shares.push(Number(share));
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
    // What making the log took is not the page's doing.
    setTimeout(() => watcher.observe({ type: "longtask" }), 200);
  }, POINTS);
  await page.waitForTimeout(500);
}

export const dropLog = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const transfer = new DataTransfer();
    transfer.items.add((window as unknown as Watching).watch.log);
    const target = document.querySelector(".drop, .head")!;
    target.dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });

/** Lengths of the long tasks so far, ms, and the shares of the reading that were shown. */
export const watched = (page: Page): Promise<{ tasks: number[]; shares: number[] }> =>
  page.evaluate(() => {
    const { tasks, shares } = (window as unknown as Watching).watch;
    return { tasks, shares };
  });

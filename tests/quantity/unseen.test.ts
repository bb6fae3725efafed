/** What two points leave open, against a flight stepped through in small steps. */
import { describe, expect, it } from "vitest";
import { strayedAcross, strayedInHeight, unseenOf } from "../../src/quantity/unseen.ts";
import { near } from "../support/near.ts";

/** Turned away at 3° a second to 20° at most, or to another angle, turned back so as to be along the course again at the end: the farthest off. */
function flown(kt: number, seconds: number, cut = 20): number {
  const step = 0.01;
  let [angle, off, farthest] = [0, 0, 0];
  for (let t = 0; t < seconds / 2; t += step) {
    // away for half of the way out, then back along the course
    const out = t < seconds / 4 ? 1 : -1;
    const left = seconds / 2 - t;
    if (out > 0 || left * 3 <= angle) angle += out * 3 * step;
    angle = Math.max(0, Math.min(cut, angle));
    off += (kt / 3600) * Math.tan((angle * Math.PI) / 180) * step;
    farthest = Math.max(farthest, off);
  }
  return farthest;
}

describe("how far an aircraft may have gone off and come back", () => {
  it.each([
    [100, 5],
    [100, 15],
    [90, 30],
    [120, 60],
    [100, 120],
    [140, 400],
  ])("%i kt, %i s: the distance of a flight stepped through, within 5 %%", (kt, seconds) => {
    const off = flown(kt, seconds);
    near(strayedAcross(kt, seconds), off, 0.05 * off + 1e-5, "NM");
  });

  it("whoever left a line at 35° may have gone on so; at 5° he may have turned to the usual 20° all the same", () => {
    near(strayedAcross(100, 112, -35), flown(100, 112, 35), 0.05 * flown(100, 112, 35), "NM");
    near(strayedAcross(100, 112, 5), strayedAcross(100, 112), 1e-12, "NM");
    near(strayedAcross(100, 112, Number.NaN), strayedAcross(100, 112), 1e-12, "NM");
  });

  it("a second hides less than a metre, five seconds less than ten: the figures of a dense log stand", () => {
    expect(strayedAcross(150, 1) * 1852).toBeLessThan(1);
    expect(strayedAcross(150, 5) * 1852).toBeLessThan(10);
    expect(strayedInHeight(1)).toBeLessThan(1);
    expect(strayedInHeight(5)).toBeLessThan(5);
  });

  it("two minutes hide nearly the 500 ft that a minute up and a minute down make", () => {
    near(strayedInHeight(120), 500, 50, "ft");
  });
});

describe("a column between its rows", () => {
  const rows = (times: number[]) => ({
    timed: true,
    timeMs: Float64Array.from(times, (t) => t * 1000),
    alongNm: Float64Array.from(times, (t) => t / 36),
    crossTrackNm: new Float64Array(times.length),
    groundSpeedKt: new Float64Array(times.length).fill(100),
    gapBefore: new Uint8Array(times.length),
  });
  const column = Float64Array.of(0, 0.1, 0.1, 0);

  it("strays from half-way between two rows, and names the silence", () => {
    const unseen = unseenOf(rows([0, 1, 121, 122]), { start: 0, end: 4 }, column, strayedAcross)!;
    near(unseen.high, 0.1 + strayedAcross(100, 120), 1e-9);
    near(unseen.low, 0.1 - strayedAcross(100, 120), 1e-9);
    expect(unseen.seconds).toBe(120);
  });

  it("beside the span nothing need have come back", () => {
    const edges = [{ row: 3, seconds: 60 }];
    const unseen = unseenOf(rows([0, 1, 2, 3]), { start: 0, end: 4 }, column, strayedAcross, edges)!;
    near(unseen.high, strayedAcross(100, 120), 1e-9);
    expect(unseen.seconds).toBe(60);
  });
});

import { describe, expect, it } from "vitest";
import type { CourseSeries } from "../../../src/index.ts";
import { thinned } from "../../../web/drawings/thinned.ts";

/** So many rows, `stepMs` apart, all on course but for one row far to the right. */
function seriesOf(length: number, stepMs: number, peakAt: number): CourseSeries {
  const column = (value: (i: number) => number) => Float64Array.from({ length }, (_, i) => value(i));
  const zero = column(() => 0);
  return {
    kind: "course",
    pathStart: 0,
    timeMs: column((i) => (Number.isNaN(stepMs) ? Number.NaN : i * stepMs)),
    alongNm: column((i) => i * 0.01),
    distanceToFixNm: zero,
    crossTrackNm: zero,
    needle: column((i) => (i === peakAt ? 0.8 : 0)),
    trackAngleErrorDeg: column((i) => (i === peakAt + 1 ? -12 : 0)),
    trackTrueDeg: zero,
    headingTrueDeg: zero,
    groundSpeedKt: zero,
    altitudeFt: zero,
    judged: Uint8Array.from({ length }, (_, i) => (i < 777 ? 0 : 1)),
  };
}

describe("by construction: fewer rows for drawing", () => {
  it.each([
    ["ten rows a second", 100],
    ["no times", Number.NaN],
  ])("%s: peaks, ends and the edge of what is judged stay", (_, stepMs) => {
    const series = seriesOf(60_000, stepMs, 12_345);
    const fewer = thinned(series);
    expect(fewer.timeMs.length).toBeLessThan(20_000);
    expect(Math.max(...fewer.needle)).toBe(0.8);
    expect(Math.min(...fewer.trackAngleErrorDeg)).toBe(-12);
    expect([fewer.alongNm[0], fewer.alongNm.at(-1)]).toEqual([0, series.alongNm.at(-1)]);
    expect(fewer.alongNm[fewer.judged.indexOf(1)]).toBe(series.alongNm[777]);
    expect([...fewer.alongNm]).toEqual([...fewer.alongNm].sort((a, b) => a - b));
  });

  it("a row a second is drawn as it is", () => {
    const series = seriesOf(3600, 1000, 100);
    expect(thinned(series)).toBe(series);
  });
});

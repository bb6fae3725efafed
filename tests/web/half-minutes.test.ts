import { expect, test } from "vitest";
import type { CourseSeries } from "../../src/index.ts";
import { sampledRows } from "../../web/half-minutes.ts";

function series(times: readonly number[], along: readonly number[]): CourseSeries {
  const nothing = new Float64Array(times.length).fill(Number.NaN);
  return {
    kind: "course",
    pathStart: 0,
    timeMs: Float64Array.from(times),
    alongNm: Float64Array.from(along),
    distanceToFixNm: nothing,
    crossTrackNm: nothing,
    needle: nothing,
    trackAngleErrorDeg: nothing,
    trackTrueDeg: nothing,
    headingTrueDeg: nothing,
    groundSpeedKt: nothing,
    altitudeFt: nothing,
    judged: new Uint8Array(times.length),
  };
}

test("a row each half minute, and the last", () => {
  const times = Array.from({ length: 76 }, (_, i) => i * 1000);
  expect(sampledRows(series(times, times))).toEqual([0, 30, 60, 75]);
});

test("after a gap the next row is the first one there, and steps stay on the half minutes", () => {
  const times = [0, 10, 20, 95, 100, 110, 121].map((s) => s * 1000);
  expect(sampledRows(series(times, times))).toEqual([0, 3, 6]);
});

test("without times, a row each half mile", () => {
  const along = [0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2];
  expect(
    sampledRows(
      series(
        along.map(() => Number.NaN),
        along,
      ),
    ),
  ).toEqual([0, 3, 5, 6]);
});

test("no rows of nothing", () => {
  expect(sampledRows(series([], []))).toEqual([]);
});

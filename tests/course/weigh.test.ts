import { describe, expect, it } from "vitest";
import type { Rows } from "../../src/course/path.ts";
import { intervals, median, rowOfLargest, shareBeyond, weigh } from "../../src/quantity/weigh.ts";
import { near } from "../support/near.ts";

/** Only what the weighing reads of the rows. */
const rowsAt = (seconds: number[], gaps: number[] = [], timed = true): Rows =>
  ({
    timed,
    timeMs: Float64Array.from(seconds, (s) => s * 1000),
    alongNm: Float64Array.from(seconds, (s) => s * 0.03),
    crossTrackNm: Float64Array.from(seconds, (s) => s * 0.04),
    gapBefore: Uint8Array.from(seconds, (_, i) => (gaps.includes(i) ? 1 : 0)),
  }) as Partial<Rows> as Rows;

const all = (column: Float64Array) => ({ start: 0, end: column.length });

describe("worked by hand: shares of time, values running straight between points", () => {
  // 0 to 1 in 100 s, then held at 1 for 10 s in one step, then back to 0 in 40 s
  const rows = rowsAt([0, 100, 110, 150]);
  const needle = Float64Array.of(0, 1, 1, 0);
  const weights = intervals(rows, all(needle));

  it.each([
    [0.25, (75 + 10 + 30) / 150],
    [0.5, (50 + 10 + 20) / 150],
    [0.75, (25 + 10 + 10) / 150],
    [1, 10 / 150],
  ])("beyond %s", (limit, share) => {
    near(shareBeyond(needle, all(needle), weights, limit), share, 1e-12);
  });

  it("left counts as right: the same shares in the mirror", () => {
    const left = needle.map((v) => -v);
    near(shareBeyond(left, all(left), weights, 0.5), 80 / 150, 1e-12);
  });

  it("mean (50 + 10 + 20) / 150 and rms root of (100/3 + 10 + 40/3) / 150", () => {
    const { mean, rms } = weigh(needle, all(needle), weights);
    near(mean, 80 / 150, 1e-12);
    near(rms, Math.sqrt((100 / 3 + 10 + 40 / 3) / 150), 1e-12);
  });

  it("a swing from -1 to 1 is beyond a half for half of it", () => {
    const swing = Float64Array.of(-1, 1);
    near(shareBeyond(swing, all(swing), intervals(rowsAt([0, 7]), all(swing)), 0.5), 0.5, 1e-12);
  });
});

describe("worked by hand: gaps and unknown values", () => {
  it("over a gap nothing counts", () => {
    const column = Float64Array.of(0, 0, 1, 1);
    const weights = intervals(rowsAt([0, 10, 500, 530], [2]), all(column));
    expect([...weights]).toEqual([0, 10, 0, 30]);
    near(shareBeyond(column, all(column), weights, 0.5), 30 / 40, 1e-12);
    near(weigh(column, all(column), weights).mean, 30 / 40, 1e-12);
  });

  it("what is not known counts neither as within nor as beyond", () => {
    const column = Float64Array.of(Number.NaN, 0, 1, Number.NaN, 1);
    const weights = intervals(rowsAt([0, 10, 30, 40, 50]), all(column));
    near(shareBeyond(column, all(column), weights, 0.5), 10 / 20, 1e-12);
    const unknown = Float64Array.of(Number.NaN, Number.NaN);
    expect(shareBeyond(unknown, all(unknown), intervals(rowsAt([0, 10]), all(unknown)), 0.5)).toBe(0);
  });

  it("without times the weights are miles over the ground: 3-4-5", () => {
    const column = Float64Array.of(0, 0, 0);
    const weights = intervals(rowsAt([0, 1, 3], [], false), all(column));
    near(weights[1]!, 0.05, 1e-12, "NM");
    near(weights[2]!, 0.1, 1e-12, "NM");
  });

  it("unknown rows are left out of the mean, and an unknown column has none", () => {
    const column = Float64Array.of(2, 2, Number.NaN, 8, 8);
    const weights = intervals(rowsAt([0, 10, 20, 30, 60]), all(column));
    near(weigh(column, all(column), weights).mean, (10 * 2 + 30 * 8) / 40, 1e-12);
    expect(weigh(column.fill(Number.NaN), all(column), weights)).toEqual({
      mean: Number.NaN,
      rms: Number.NaN,
      weight: 0,
    });
    expect(rowOfLargest(column, all(column))).toBe(-1);
  });

  it("the middle value, of negatives too", () => {
    expect(median(Float64Array.of(-10, 9, -2))).toBe(-2);
    expect(median(Float64Array.of(4, 1, Number.NaN, 3))).toBe(3);
    expect(median(new Float64Array())).toBeNaN();
  });
});

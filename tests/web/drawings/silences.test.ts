import { describe, expect, it } from "vitest";
import { beyond, brokenAt } from "../../../web/drawings/courseColumns.ts";
import { stretchesOf } from "../../../web/drawings/nearestRow.ts";
import { cutAtSilences, rowsAfterSilence, silenceWords } from "../../../web/drawings/silences.ts";

/** A point a second, but for some that the log does not have. */
const clock = (...missing: readonly (readonly [number, number])[]) =>
  Float64Array.from(
    Array.from({ length: 200 }, (_, i) => i).filter((s) => !missing.some(([a, b]) => s > a && s < b)),
    (s) => s * 1000,
  );

describe("silences of a log, drawn", () => {
  it("longer than 15 s and five usual intervals: the row after one is told, and the words are there", () => {
    expect([...rowsAfterSilence(clock([100, 140]))]).toEqual([101]);
    expect([...rowsAfterSilence(clock([100, 110]))]).toEqual([]);
    expect(silenceWords(clock([100, 140]))).toMatch(/Dashes and dots: the log is silent there/);
    expect(silenceWords(clock())).toBe("");
  });

  it("a log of a point each 20 s has none of 40 s, and one of three minutes", () => {
    const sparse = Float64Array.from([0, 20, 40, 60, 100, 120, 140, 320, 340], (s) => s * 1000);
    expect([...rowsAfterSilence(sparse)]).toEqual([7]);
  });

  it("without times there is none", () => {
    expect([...rowsAfterSilence(new Float64Array(9).fill(Number.NaN))]).toEqual([]);
  });

  it("a line is cut there, and the step across stands apart", () => {
    expect(cutAtSilences({ from: 2, to: 10 }, new Set([0, 2, 5]))).toEqual([
      { from: 2, to: 5, unseen: false },
      { from: 4, to: 6, unseen: true },
      { from: 5, to: 10, unseen: false },
    ]);
  });

  it("judged and unjudged stretches are cut alike", () => {
    const timeMs = clock([2, 40]);
    const judged = new Uint8Array(timeMs.length).fill(1, 0, 20);
    expect(stretchesOf(judged, timeMs).map(({ judged: j, unseen }) => [j, unseen])).toEqual([
      [true, false],
      [true, true],
      [true, false],
      [false, false],
    ]);
  });

  it("nothing is drawn beyond a limit across one", () => {
    const line = [0.9, 0.9, 0.9, 0.9].map((y, x) => ({ x, y }));
    const broken = beyond(brokenAt(line, new Set([2])), 0.75);
    expect(broken.map(({ y }) => y)).toEqual([0.9, 0.9, Number.NaN, 0.9, 0.9]);
  });
});

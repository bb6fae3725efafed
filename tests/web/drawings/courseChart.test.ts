/** The configuration of a course chart, as data. */
import { describe, expect, it } from "vitest";
import { courseChart } from "../../../web/drawings/courseChart.ts";
import { MINUTE_MS, rowSize } from "../../../web/drawings/courseLayout.ts";
import { fixedScales, PX_PER_MM } from "../../../web/drawings/scale.ts";
import { near } from "../../support/near.ts";
import { factsOf, palette, seriesOf, vor } from "./invented.ts";

const row = (timed: boolean, crossTrack = [0, 0.2, 0.5, 1.4, 0.5, 0]) => {
  const series = seriesOf(crossTrack, timed);
  const x = timed ? series.timeMs : series.alongNm;
  return {
    facts: factsOf(vor),
    limit: 0.75,
    series,
    from: x[0],
    to: x[x.length - 1],
    pxPerUnit: (20 * PX_PER_MM) / (timed ? MINUTE_MS : 1),
    scales: fixedScales(false),
    narrow: false,
    continued: false,
    palette,
    devicePixelRatio: 1,
    marked: () => null,
  };
};
// biome-ignore lint/suspicious/noExplicitAny: the scales are read as plain data
const scalesOf = (timed: boolean) => courseChart(row(timed)).options?.scales as any;

describe("course chart", () => {
  it("CSS Values and Units 3, 5.2: 25.4 mm are 96 px; 1 min = 20 mm, full scale = 20 mm, 10° = 5.5 mm (the look)", () => {
    const size = rowSize(row(true));
    near(size.plot, (5 * 20 * 96) / 25.4, 1e-9, "px");
    near(size.needle, (2 * 20 * 96) / 25.4, 1e-9, "px");
    near(size.error, (6 * 5.5 * 96) / 25.4, 1e-9, "px");
    expect(fixedScales(true)).toMatchObject({
      mmPerMinute: 10,
      mmPerFullScale: 20,
      mmPerTenKnotsOfCircle: 4,
    });
  });

  it("lays right of course, the positive side, below the line on both charts", () => {
    const { needle, error } = scalesOf(true);
    expect(needle).toMatchObject({ reverse: true, min: -1, max: 1 });
    expect(error).toMatchObject({ reverse: true, min: -30, max: 30 });
  });

  it("names its ticks by side, without signs: 1 L, ½ L, 0, ½ R, 1 R", () => {
    const { needle } = scalesOf(true);
    const scale: { ticks: { value: number }[] } = { ticks: [] };
    needle.afterBuildTicks(scale);
    expect(scale.ticks.map(({ value }) => needle.ticks.callback(value))).toEqual([
      "1 L",
      "½ L",
      "0",
      "½ R",
      "1 R",
    ]);
  });

  it("divides the height as the fixed scales ask", () => {
    const { needle, gap, error } = scalesOf(true);
    const size = rowSize(row(true));
    expect([needle.stackWeight, gap.stackWeight, error.stackWeight]).toEqual([
      size.needle,
      size.gap,
      size.error,
    ]);
  });

  it("has no track angle error chart, and distance for its axis, where the log has no times", () => {
    const { needle, error, x } = scalesOf(false);
    expect(needle).toBeDefined();
    expect(error).toBeUndefined();
    expect([x.min, x.max]).toEqual([-5, 0]);
  });

  it("draws at once, unparsed and without point marks", () => {
    const { options, data } = courseChart(row(true));
    expect(options?.animation).toBe(false);
    for (const set of data.datasets) expect(set).toMatchObject({ parsing: false, pointRadius: 0 });
  });

  it("pegs the needle at full scale and marks what is beyond three quarters on its own side only", () => {
    const [right, left, needle] = courseChart(row(true)).data.datasets.map((set) => set.data);
    expect(Math.max(...needle.map(({ y }) => y))).toBe(1);
    expect(left).toEqual([]);
    expect(right.filter(({ y }) => Number.isFinite(y)).every(({ y }) => y >= 0.75)).toBe(true);
    expect(right.filter(({ y }) => y === 0.75)).toHaveLength(2);
  });
});

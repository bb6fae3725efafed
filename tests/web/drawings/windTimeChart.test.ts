/** The wind against time, and against height, as data. */
import { describe, expect, it } from "vitest";
import type { DocumentLeg, WindRecord } from "../../../src/index.ts";
import { fixedScales, PX_PER_MM } from "../../../web/drawings/scale.ts";
import { TEN_MINUTES_MS, windRowSize, windWindow } from "../../../web/drawings/windChartLayout.ts";
import { heightLayout, shownByHeight } from "../../../web/drawings/windHeights.ts";
import { legSpans, runs, windStrokes } from "../../../web/drawings/windStrokes.ts";
import { windTimeChart } from "../../../web/drawings/windTimeChart.ts";
import { near } from "../../support/near.ts";
import { palette } from "./invented.ts";

const wind = (over: Partial<WindRecord>): WindRecord => ({
  knowledge: "full",
  fromTrueDeg: 350,
  speedKt: 20,
  alongKt: 1,
  acrossKt: 1,
  along95Kt: 3,
  across95Kt: 3,
  ellipse95Kt: { majorKt: 4, minorKt: 4, majorTrueDeg: 0 },
  tasKt: 100,
  tas95Kt: 3,
  restsOn: "turns",
  ...over,
});
const unknown = { fromTrueDeg: null, speedKt: null, alongKt: null, ellipse95Kt: null };
const north = wind({});
const pastNorth = wind({ fromTrueDeg: 10 });
const light = wind({ fromTrueDeg: 180, speedKt: 3 });
const along = wind({ ...unknown, knowledge: "along", alongKt: -12, along95Kt: 5 });
const none = wind({ ...unknown, knowledge: "none", restsOn: "nothing" });

const at = (minute: number) => new Date(Date.UTC(2026, 9, 17, 9, minute)).toISOString();
/** Ten minutes each. */
const legs = (...winds: WindRecord[]): DocumentLeg[] =>
  winds.map(
    (w, i) =>
      ({
        kind: i === 1 ? "turn" : "straight",
        startUtc: at(10 * i),
        endUtc: at(10 * i + 10),
        wind: w,
      }) as DocumentLeg,
  );
const strokesOf = (...winds: WindRecord[]) => windStrokes(legSpans(legs(...winds)));
const rowOf = (...winds: WindRecord[]) => {
  const strokes = strokesOf(...winds);
  return {
    strokes,
    window: windWindow(strokes),
    from: strokes[0].from,
    to: strokes[strokes.length - 1].to,
    pxPerMs: (30 * PX_PER_MM) / TEN_MINUTES_MS,
    scales: fixedScales(false),
    narrow: false,
    continued: false,
    palette,
    devicePixelRatio: 1,
  };
};
const set = (row: ReturnType<typeof rowOf>, label: string) =>
  windTimeChart(row)
    .data.datasets.find((d) => d.label === label)
    ?.data.filter(({ y }) => Number.isFinite(y));

describe("wind against time", () => {
  it("CSS Values and Units 3, 5.2: 10 min = 30 mm, 30° = 10 mm, 10 kt = 5 mm (the look); half the time axis when narrow", () => {
    const size = windRowSize(rowOf(north, pastNorth));
    near(size.plot, (2 * 30 * 96) / 25.4, 1e-9, "px");
    // 350 and 10 with tangents of asin(4/20) = 11.5° span 338 to 21, so 330 to 30: two ticks
    near(size.direction, (2 * 10 * 96) / 25.4, 1e-9, "px");
    near(size.speed, (3 * 5 * 96) / 25.4, 1e-9, "px");
    expect(fixedScales(true).mmPerTenMinutesOfWind).toBe(15);
  });

  it("does not jump at north: winds from 350 and 10 lie 20 apart, straights and turns each with their stroke", () => {
    const row = rowOf(north, pastNorth);
    const [a] = set(row, "direction on straights")!;
    const [b] = set(row, "direction in turns")!;
    near(b.y - a.y, 20, 1e-9, "°");
  });

  it("names its ticks true and within 001 to 360 on both sides of north", () => {
    // biome-ignore lint/suspicious/noExplicitAny: the scales are read as plain data
    const direction = windTimeChart(rowOf(north, pastNorth)).options?.scales?.direction as any;
    const scale: { ticks: { value: number }[] } = { ticks: [] };
    direction.afterBuildTicks(scale);
    expect(scale.ticks.map(({ value }) => direction.ticks.callback(value))).toEqual([
      "330°T",
      "360°T",
      "030°T",
    ]);
  });

  it("draws no direction for a light wind, only its speed from calm; the part along the track by itself; nothing where nothing is known", () => {
    const row = rowOf(north, light, along, none);
    expect(row.strokes.map(({ known }) => known)).toEqual(["full", "light", "along", "none"]);
    expect(set(row, "direction in turns")).toEqual([]);
    expect(set(row, "speed in turns")!.map(({ y }) => y)).toEqual([3, 3]);
    expect(row.strokes[1].speed).toMatchObject({ low: 0, high: 7 });
    expect(set(row, "along the track")!.map(({ y }) => y)).toEqual([12, 12]);
    expect(row.strokes[2].along).toEqual({ value: 12, low: 7, high: 17, behind: false });
    expect(row.strokes[3]).toMatchObject({ direction: null, speed: null, along: null });
  });

  it("has no direction chart where no leg has a direction", () => {
    const { options, data } = windTimeChart(rowOf(along, light));
    expect(Object.keys(options?.scales ?? {}).sort()).toEqual(["speed", "x"]);
    expect(data.datasets.some(({ label }) => label?.startsWith("direction"))).toBe(false);
  });

  it("joins neighbours of the same knowledge for one word, and keeps apart what a known leg divides", () => {
    const found = runs(strokesOf(none, none, along, north, none), (known) => known !== "full");
    expect(found.map(({ known, from, to }) => [known, (to - from) / 60_000])).toEqual([
      ["none", 20],
      ["along", 10],
      ["none", 10],
    ]);
  });

  it("never shows more than once round", () => {
    const wide = [0, 90, 180, 270].map((from) =>
      wind({ fromTrueDeg: from, speedKt: 10, ellipse95Kt: { majorKt: 9.9, minorKt: 9.9, majorTrueDeg: 0 } }),
    );
    const { min, max } = windWindow(strokesOf(...wide)).direction!;
    expect(max - min).toBeLessThanOrEqual(360);
  });
});

describe("wind against height", () => {
  const band = (lowFt: number, w = north) => ({
    lowFt,
    highFt: lowFt + 500,
    altitudeFt: lowFt + 250,
    seconds: 60,
    wind: w,
  });

  it("is shown from over 1,000 ft of height with a known wind on", () => {
    expect(shownByHeight(undefined)).toBe(false);
    expect(shownByHeight([])).toBe(false);
    expect(shownByHeight([band(1000), band(1500), band(2000)])).toBe(false);
    expect(shownByHeight([band(1000), band(2500)])).toBe(true);
  });

  it("lays the higher band above, 1,000 ft = 10 mm, each at the middle of its band", () => {
    const layout = heightLayout([band(1000), band(2500, light)], fixedScales(false));
    near(layout.marks[0].y - layout.marks[1].y, (15 * 96) / 25.4, 1e-9, "px");
    near(layout.height, (20 * 96) / 25.4, 1e-9, "px");
    expect(layout.marks[1].direction).toBeNull();
    expect(layout.ticks.map(({ ft }) => ft)).toEqual([1000, 2000, 3000]);
    expect(layout.fitted).toBe(false);
  });

  it("says that it is fitted where the flight went too high for the scale", () => {
    expect(heightLayout([band(1000), band(30000)], fixedScales(false)).fitted).toBe(true);
  });
});

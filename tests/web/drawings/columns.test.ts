/** Columns to points: crossings, miles, veils. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { needleOf } from "../../../src/index.ts";
import { beyond, mileTicks, unjudged } from "../../../web/drawings/courseColumns.ts";
import { rowAt } from "../../../web/drawings/cursor.ts";
import { veilSpans } from "../../../web/drawings/judgedWords.ts";
import { momentsOf } from "../../../web/drawings/moments.ts";
import { isolineMiles, labelPlace } from "../../../web/drawings/plugins/isolines.ts";
import { cutRows, ticksWithin } from "../../../web/drawings/rows.ts";
import { secondsToQuarter } from "../../../web/drawings/secondsToQuarter.ts";
import { near } from "../../support/near.ts";
import { factsOf, rnav1, seriesOf, vor } from "./invented.ts";

describe("isolines", () => {
  it("are few and inside the chart at the distance they are chosen for (geometry of the tangent)", () => {
    expect(isolineMiles(vor, 5.5)).toEqual([0.25, 0.5, 1]);
    expect(isolineMiles(rnav1, 5.5)).toEqual([0.25, 0.5]);
  });

  it("carry their name on themselves, within the row", () => {
    const series = seriesOf(new Array(12).fill(0));
    const place = labelPlace(series.alongNm, series.distanceToFixNm, vor, 0.5, [-11, 0], 0.5);
    expect(place).not.toBeNull();
    if (place === null) return;
    near(place.share, needleOf(vor, 0.5, -place.x), 1e-12);
    expect(place.x).toBeGreaterThan(-11);
  });
});

describe("stretches", () => {
  it("cut where the straight line between two rows crosses the limit (similar triangles)", () => {
    const cut = beyond(
      [
        { x: 0, y: 0.5 },
        { x: 10, y: 1 },
        { x: 20, y: 0.5 },
      ],
      0.75,
    );
    expect(cut.slice(0, 3)).toEqual([
      { x: 5, y: 0.75 },
      { x: 10, y: 1 },
      { x: 15, y: 0.75 },
    ]);
    expect(cut[3].y).toBeNaN();
  });

  it("break at a row that is not known", () => {
    const cut = beyond(
      [
        { x: 0, y: 0.9 },
        { x: 1, y: Number.NaN },
        { x: 2, y: 0.9 },
      ],
      0.75,
    );
    expect(cut.map(({ y }) => Number.isNaN(y))).toEqual([false, true, false]);
  });

  it("put a tick at every whole mile, once, between the rows that enclose it", () => {
    const ticks = mileTicks(Float64Array.of(0, 60, 120), Float64Array.of(2.5, 1.5, 0.5));
    expect(ticks).toEqual([
      { x: 30, y: 2 },
      { x: 90, y: 1 },
    ]);
    expect(mileTicks(Float64Array.of(0, 1, 2, 3), Float64Array.of(3, 2, 1, 0)).map(({ y }) => y)).toEqual([
      3, 2, 1, 0,
    ]);
  });

  it("veil what is not judged, up to the first judged row", () => {
    expect(unjudged(Float64Array.of(0, 1, 2, 3, 4), Uint8Array.of(0, 0, 1, 1, 0))).toEqual([
      { from: 0, to: 2, rows: [0, 1] },
      { from: 3, to: 4, rows: [4, 4] },
    ]);
    const [span] = veilSpans(factsOf(vor), seriesOf([0, 0, 0]));
    expect(span.words).toEqual(["near the fix,", "not judged"]);
  });
});

describe("rows", () => {
  it("cover the span without gap or overlap, all but the last full, at the fixed scale (property)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 60, max: 900 }), (minutes, roomPx) => {
        const { rows, pxPerUnit } = cutRows({
          from: 0,
          to: minutes,
          pxPerUnit: 75.6,
          step: 1,
          roomPx,
          fit: false,
        });
        expect(pxPerUnit).toBe(75.6);
        expect(rows[0].from).toBe(0);
        expect(rows[rows.length - 1].to).toBe(minutes);
        expect(rows.slice(1).map((row) => row.from)).toEqual(rows.slice(0, -1).map((row) => row.to));
        const widest = Math.max(...rows.map((row) => (row.to - row.from) * pxPerUnit));
        expect(widest).toBeLessThanOrEqual(Math.max(roomPx, 75.6));
      }),
    );
  });

  it("fit into one row on demand", () => {
    expect(cutRows({ from: 10, to: 60, pxPerUnit: 75, step: 1, roomPx: 500, fit: true })).toEqual({
      rows: [{ from: 10, to: 60 }],
      pxPerUnit: 10,
    });
    expect(() => cutRows({ from: 1, to: 1, pxPerUnit: 1, step: 1, roomPx: 1, fit: true })).toThrow(
      RangeError,
    );
    expect(ticksWithin(0.5, 3, 1)).toEqual([1, 2, 3]);
  });
});

describe("moment", () => {
  it("finds the nearest row, and none outside the column or without times", () => {
    const time = Float64Array.of(0, 1000, 2000, 9000);
    expect([0, 1400, 1600, 6000, 9500].map((t) => rowAt(time, t))).toEqual([0, 1, 2, 3, 3]);
    expect([
      rowAt(time, -2000),
      rowAt(time, 20_000),
      rowAt(time, null),
      rowAt(Float64Array.of(Number.NaN), 0),
    ]).toEqual([null, null, null, null]);
  });
});

describe("seconds to a quarter", () => {
  const now = { offNm: 0, errorDeg: 5, speedKt: 90, distanceNm: 8 };

  it("closed form on a linear scale: a quarter of a mile at v sin(error) across", () => {
    const seconds = secondsToQuarter({ scale: rnav1, form: "leg" }, now);
    near(seconds ?? Number.NaN, 0.25 / ((90 / 3600) * Math.sin((5 * Math.PI) / 180)), 1, "s");
  });

  it("common practice, no source: inbound 241 with track 246 drifts right, outbound 270 with track 258 drifts left; both show in time", () => {
    expect(secondsToQuarter({ scale: vor, form: "to" }, { ...now, errorDeg: 246 - 241 })).toBeGreaterThan(0);
    expect(
      secondsToQuarter({ scale: vor, form: "from" }, { ...now, errorDeg: 258 - 270, distanceNm: 3 }),
    ).toBeGreaterThan(0);
  });

  it("is silent where the needle is past a quarter, where the track leads back, and where it is not known", () => {
    const course = { scale: rnav1, form: "leg" } as const;
    expect(secondsToQuarter(course, { ...now, offNm: 0.3 })).toBeNull();
    expect(secondsToQuarter(course, { ...now, offNm: -0.24, errorDeg: 1.5, distanceNm: 1 })).toBeNull();
    expect(secondsToQuarter(course, { ...now, errorDeg: Number.NaN })).toBeNull();
  });
});

describe("moments", () => {
  const excursion = (minutes: [number, number | null, number], worstNeedle: number) => {
    const utc = (minute: number | null) =>
      minute === null ? null : new Date(Date.UTC(2026, 9, 17, 9, 44 + minute)).toISOString();
    const [a, b, c] = minutes;
    return {
      side: "right" as const,
      trackOffUtc: utc(a) as string,
      trackErrorDeg: 4,
      trackTrueDeg: 224,
      quarterUtc: utc(b),
      correctedUtc: utc(c),
      silentS: b === null ? null : (b - a) * 60,
      leadS: (c - a) * 60,
      worstCrossTrackNm: worstNeedle,
      worstNeedle,
      worstUtc: utc(c) as string,
      causes: [],
    };
  };

  it("words and dimension lines on the worst excursion only; one that the needle never showed is left out beside it", () => {
    const series = seriesOf([0, 0.1, 0.3, 0.6, 0.1, 0.1, 0]);
    const { rings, dimensions } = momentsOf(
      [excursion([1, 2, 3], 0.6), excursion([4, null, 5], 0.1)],
      series,
    );
    expect(rings.map(({ chart, y }) => [chart, y])).toEqual([
      ["error", 4],
      ["needle", 0.3],
      ["needle", 0.6],
      ["error", 4],
    ]);
    expect(dimensions.map(({ words }) => words)).toEqual(["needle silent 60 s", "lead 120 s"]);
  });
});

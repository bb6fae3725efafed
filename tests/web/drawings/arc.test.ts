/** Charts and plan of an arc: fixed scales, hands, the coast along a curve. */
import { describe, expect, it } from "vitest";
import type { ArcFacts, ArcSeries } from "../../../src/index.ts";
import { alongArc, arcPlanFrame } from "../../../web/drawings/arcPlanFrame.ts";
import { arcLayout, arcLimit } from "../../../web/drawings/arcWindow.ts";
import { hachuresAlong } from "../../../web/drawings/coastAlong.ts";
import { judgedRows, nearestRow, stretchesOf } from "../../../web/drawings/nearestRow.ts";
import { stripY } from "../../../web/drawings/Strip.tsx";
import { fixedScales } from "../../../web/drawings/scale.ts";
import type { Point } from "../../../web/drawings/windGeometry.ts";
import { near } from "../../support/near.ts";

// CSS Values and Units 3, 5.2: 25.4 mm are 96 px
const PX_PER_MM = 96 / 25.4;
const wide = fixedScales(false);

const arc = (sweepDeg: number, radiusNm = 10, turns: "left" | "right" = "right"): ArcFacts =>
  ({ fix: "TARNO", sweepDeg, radiusNm, turns, fromRadialTrueDeg: 300 }) as ArcFacts;

const flown = (radials: number[], distances: number[]): ArcSeries =>
  ({ radialTrueDeg: Float64Array.from(radials), distanceNm: Float64Array.from(distances) }) as ArcSeries;

describe("the charts of an arc", () => {
  it("10° = 15 mm along, 1 NM = 20 mm and 10° = 5.5 mm across, whatever its sweep and radius", () => {
    for (const facts of [arc(30), arc(50, 7), arc(90, 15, "left")]) {
      const l = arcLayout(facts, 720, wide, false);
      near(l.x(10) - l.x(0), 15 * PX_PER_MM, 1e-9, "px");
      near(stripY(l.deviation, 1) - stripY(l.deviation, 0), 20 * PX_PER_MM, 1e-9, "px");
      near(stripY(l.error, 10) - stripY(l.error, 0), 5.5 * PX_PER_MM, 1e-9, "px");
      expect(l.width).toBeLessThanOrEqual(720);
    }
  });

  it("half a circle takes the next smaller scale, whole", () => {
    const l = arcLayout(arc(180), 720, wide, false);
    expect(l.mmPerTenDegrees).toBeLessThan(15);
    expect(l.x(185)).toBeLessThanOrEqual(l.right + 1e-9);
  });

  it("the limit drawn is that of the standard, else a mile (FAA-S-ACS-8C V.A.S6)", () => {
    expect(arcLimit([])).toBe(1);
    expect(arcLimit([{ criterion: "arc-distance", limit: 0.5 }] as never)).toBe(0.5);
  });
});

describe("the plan of an arc", () => {
  it("north-up at 1 NM = 10 mm: radial 000 is above the station, 090 right of it", () => {
    const { place, mmPerMile, hasStation } = arcPlanFrame(arc(50), flown([300, 350], [10, 10]), 720, 10);
    expect(mmPerMile).toBe(10);
    expect(hasStation).toBe(true);
    const [x, y] = place(0, 0);
    near(place(0, 10)[1] - y, -100 * PX_PER_MM, 1e-9, "px");
    near(place(90, 10)[0] - x, 100 * PX_PER_MM, 1e-9, "px");
  });

  it("a wide arc keeps the scale and leaves off its far station", () => {
    const { hasStation, mmPerMile, width } = arcPlanFrame(arc(30, 25), flown([300, 330], [25, 25]), 720, 10);
    expect(hasStation).toBe(false);
    expect(mmPerMile).toBe(10);
    expect(width).toBeLessThanOrEqual(720);
  });

  it("a right-hand arc goes up the radials, a left-hand one down", () => {
    expect(alongArc(arc(50), 10).at(-1)![0]).toBe(350);
    expect(alongArc(arc(50, 10, "left"), 10).at(-1)![0]).toBe(250);
  });

  it("has its hachures on the side named, all along the curve, 6 px apart", () => {
    const quarter = Array.from({ length: 91 }, (_, k): Point => {
      const turn = (k * Math.PI) / 180;
      // from the east to the south on the page: turning right
      return [100 * Math.cos(turn), 100 * Math.sin(turn)];
    });
    const radius = ([x, y]: Point) => Math.hypot(x, y);
    const inward = hachuresAlong(quarter, 1);
    expect(inward.every(([root, tip]) => radius(tip) < radius(root))).toBe(true);
    expect(hachuresAlong(quarter, -1).every(([root, tip]) => radius(tip) > radius(root))).toBe(true);
    // a quarter of the circumference: 157 px
    near(inward.length, (100 * Math.PI) / 2 / 6, 1, "strokes");
  });
});

describe("rows by a column", () => {
  it("the nearest within reach, or none", () => {
    const column = Float64Array.of(0, 5, Number.NaN, 10);
    expect(nearestRow(column, 5.4, 1)).toBe(1);
    expect(nearestRow(column, 7.5, 1)).toBeNull();
    expect(nearestRow(column, 5, 1, [2, 4])).toBeNull();
  });

  it("what is judged is told from what is not, and the lines meet", () => {
    const judged = Uint8Array.of(0, 0, 1, 1, 0);
    expect(judgedRows(judged)).toEqual([2, 4]);
    const everySecond = Float64Array.of(0, 1000, 2000, 3000, 4000);
    expect(stretchesOf(judged, everySecond)).toEqual([
      { from: 0, to: 3, judged: false, unseen: false },
      { from: 2, to: 5, judged: true, unseen: false },
      { from: 4, to: 5, judged: false, unseen: false },
    ]);
  });
});

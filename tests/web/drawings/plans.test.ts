/** Hands and scales of plans and wind arrows. */
import { describe, expect, it } from "vitest";
import type { CourseRecord, WindRecord } from "../../../src/index.ts";
import { lineUpMarks, needleRms } from "../../../web/drawings/LineUpRow.tsx";
import { viewAfterKey, zoomAbout } from "../../../web/drawings/panZoom.ts";
import { planeAt, steppedScale } from "../../../web/drawings/plane.ts";
import { limitLines, planFrame } from "../../../web/drawings/planGeometry.ts";
import { hachures } from "../../../web/drawings/plugins/coast.ts";
import { PX_PER_KNOT } from "../../../web/drawings/scale.ts";
import { windGeometry } from "../../../web/drawings/windGeometry.ts";
import { near } from "../../support/near.ts";
import { factsOf, rnav1, seriesOf, vor } from "./invented.ts";

const west: WindRecord = {
  knowledge: "full",
  fromTrueDeg: 270,
  speedKt: 20,
  alongKt: null,
  acrossKt: null,
  along95Kt: null,
  across95Kt: null,
  ellipse95Kt: { majorKt: 4, minorKt: 2, majorTrueDeg: 0 },
  tasKt: null,
  tas95Kt: null,
  restsOn: "turns",
};

describe("wind arrow", () => {
  it("a west wind blows to the east, right on a north-up drawing; 20 kt are 10 mm (the look: 10 kt = 5 mm)", () => {
    const { arrow, oval } = windGeometry(west, 0, PX_PER_KNOT, null);
    if (!arrow || !oval) return expect.fail("no arrow");
    near(arrow.head[0] - arrow.tail[0], (10 * 96) / 25.4, 1e-9, "px");
    near(arrow.head[1] - arrow.tail[1], 0, 1e-9, "px");
    // Long axis north and south: an SVG ellipse is turned by a quarter.
    near(Math.abs(oval.turn), 90, 1e-9, "degrees");
  });

  it("with an easterly course laid to the right, a south wind comes from the right-hand side, below", () => {
    const { arrow } = windGeometry({ ...west, fromTrueDeg: 180 }, 90 - 90, PX_PER_KNOT, null);
    if (!arrow) return expect.fail("no arrow");
    expect(arrow.tail[1]).toBeGreaterThan(arrow.head[1]);
  });

  it("known along the track only: on the track, with a line across it, and no oval", () => {
    const along = { ...west, knowledge: "along", fromTrueDeg: null, speedKt: null, alongKt: -10 } as const;
    const g = windGeometry(along, 0, PX_PER_KNOT, 90);
    if (!g.arrow || !g.openDoubt) return expect.fail("no arrow");
    expect(g.arrow.head[0]).toBeLessThan(g.arrow.tail[0]);
    near(g.openDoubt[0][0], g.openDoubt[1][0], 1e-9, "px");
    expect(g.oval).toBeNull();
    expect(windGeometry({ ...along, knowledge: "none" }, 0, 1, 90).arrow).toBeNull();
  });
});

describe("course plan", () => {
  it("keeps 1 NM at the scale given, and only shrinks on demand", () => {
    const long = seriesOf(new Array(41).fill(0));
    expect(planFrame(factsOf(vor), long, 720, 37.8, false).pxPerMile).toBe(37.8);
    const fitted = planFrame(factsOf(vor), long, 720, 37.8, true);
    expect(fitted.neededPx).toBeLessThanOrEqual(720);
    expect(planFrame(factsOf(vor), seriesOf([0, 0, 0]), 720, 37.8, true).pxPerMile).toBe(37.8);
  });

  it("opens its wedge from the station: 10° of a VOR are 1.76 NM at 10 NM (tangent), and nothing at the fix", () => {
    const full = limitLines(factsOf(vor), { startNm: -10, endNm: 0 }, 0.75).filter(
      (limit) => limit.share === 1,
    );
    for (const { side, from, to } of full) {
      near(from[1], side * 1.763, 0.001, "NM");
      near(to[1], 0, 1e-12, "NM");
    }
    const level = limitLines(factsOf(rnav1, "leg"), { startNm: 0, endNm: 8 }, 0.75);
    expect(level.every(({ from, to }) => from[1] === to[1])).toBe(true);
  });

  it("has its hachures on the far side: below (y down) on the right of course, above on the left", () => {
    expect(hachures(0, 30, 100, 1).every(([, y1, , y2]) => y2 > y1)).toBe(true);
    expect(hachures(0, 30, 100, -1).every(([, y1, , y2]) => y2 < y1)).toBe(true);
  });
});

describe("flight plan", () => {
  it("a minute of latitude is about a mile anywhere, of longitude half of one at 60° (geometry)", () => {
    const [east, north] = planeAt(60, 172).place(60 + 1 / 60, 172 + 1 / 60);
    near(north, 1, 0.005, "NM");
    near(east, 0.5, 0.005, "NM");
  });

  it("stays whole over the antimeridian", () => {
    near(planeAt(0, 179.5).place(0, -179.5)[0], 60, 0.01, "NM");
  });

  it("takes the largest step of its ladder that fits", () => {
    expect(steppedScale(30, 20, 190, 130)).toBe(5);
    expect(steppedScale(1e5, 1, 190, 130)).toBe(0.1);
  });

  it("zooms about the pointer and moves by keys; 0 goes home", () => {
    const view = zoomAbout({ zoom: 1, x: 10, y: 0 }, 2, 100, 50);
    // The point under the pointer stays: (100 - 10) / 1 = (100 - x) / 2.
    expect((100 - view.x) / view.zoom).toBe(90);
    expect(viewAfterKey(view, "0", 1, 1)).toEqual({ zoom: 1, x: 0, y: 0 });
    expect(viewAfterKey(view, "q", 1, 1)).toBeNull();
  });
});

describe("line-up", () => {
  const exercise = (facts: CourseRecord["facts"]) => ({ facts }) as CourseRecord;

  it("puts the worst needle at its share, sizes only, and nothing where not flown", () => {
    expect(lineUpMarks(exercise(factsOf(rnav1)))).toEqual({
      worst: 0.5,
      beyond: false,
      whisker: [0.46, 0.54],
      rms: 0.2,
    });
    expect(lineUpMarks(exercise(factsOf(vor)))?.rms).toBeNull();
    expect(lineUpMarks(exercise(null))).toBeNull();
  });

  it("root mean square of 3 and 4 is 3.5355 (definition), of judged rows only", () => {
    near(needleRms(Float64Array.of(3, 4, 9), Uint8Array.of(1, 1, 0)) ?? Number.NaN, 3.53553, 1e-5);
    expect(needleRms(Float64Array.of(1), Uint8Array.of(0))).toBeNull();
  });
});

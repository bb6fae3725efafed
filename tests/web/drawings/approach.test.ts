/** Profile, strips and plan of an approach: fixed scales, hands, and which row a pointer means. */
import { describe, expect, it } from "vitest";
import { profileLayout, profileMargins } from "../../../web/drawings/approachLayout.ts";
import { approachPlanFrame } from "../../../web/drawings/approachPlanFrame.ts";
import { rowAtDistance, stretchesAlong } from "../../../web/drawings/approachStretches.ts";
import { approachWindow } from "../../../web/drawings/approachWindow.ts";
import { floors } from "../../../web/drawings/floors.ts";
import { needleLimit } from "../../../web/drawings/needleLimit.ts";
import { beyondLimit, stripY } from "../../../web/drawings/Strip.tsx";
import { fittingScale, fixedScales } from "../../../web/drawings/scale.ts";
import type { Point } from "../../../web/drawings/windGeometry.ts";
import { near } from "../../support/near.ts";
import { type InventedApproach, inventApproach } from "./invented-approach.ts";

// CSS Values and Units 3, 5.2: 25.4 mm are 96 px
const PX_PER_MM = 96 / 25.4;
const wide = fixedScales(false);
const room = 720 - profileMargins(false).left - profileMargins(false).right;

function drawn(given: InventedApproach = {}) {
  const { exercise, series } = inventApproach(given);
  const facts = exercise.facts!;
  const window = approachWindow(facts, series, room, wide);
  return { facts, series, window, l: profileLayout(window, wide, false, { glidePath: true, times: true }) };
}

describe("the profile of an approach", () => {
  it("1 NM = 20 mm and 1,000 ft = 20 mm, whatever was flown (the look)", () => {
    for (const given of [{}, { fromNm: 6, joinedNm: 5.5 }, { fixNm: 4 }, { fixNm: 5.8, joinedNm: 12 }]) {
      const { l } = drawn(given);
      near(l.x(0) - l.x(1), 20 * PX_PER_MM, 1e-9, "px");
      near(l.y(0) - l.y(1000), 20 * PX_PER_MM, 1e-9, "px");
      near(stripY(l.lateral, 1) - stripY(l.lateral, 0), 10 * PX_PER_MM, 1e-9, "px");
    }
  });

  it("a final fix so far out that it does not fit takes the next smaller scale, whole", () => {
    const { window, l } = drawn({ fixNm: 10, fromNm: 14 });
    expect(window.mmPerMile).toBe(10);
    expect(l.x(10)).toBeGreaterThan(l.left);
    expect(l.width).toBeLessThanOrEqual(720);
    expect(fittingScale(20, () => true)).toBe(20);
  });

  it("the threshold lies right of the final fix, higher is up, right of course and low are below", () => {
    const { l } = drawn();
    expect(l.x(0)).toBeGreaterThan(l.x(5));
    expect(l.y(1500)).toBeLessThan(l.y(0));
    expect(stripY(l.lateral, 0.5)).toBeGreaterThan(stripY(l.lateral, 0));
    expect(stripY(l.glide!, -0.5)).toBeGreaterThan(stripY(l.glide!, 0));
    expect(stripY(l.rate!, -500)).toBeGreaterThan(stripY(l.rate!, 0));
  });

  it("a needle past full scale stands at its peg, an unknown one nowhere", () => {
    const { l } = drawn();
    expect(stripY(l.lateral, 3)).toBe(stripY(l.lateral, 1));
    expect(stripY(l.lateral, Number.NaN)).toBeNaN();
  });

  it("without an elevation the altitude as logged is drawn, from a whole 500 ft below the lowest", () => {
    const { window } = drawn({
      facts: { runway: { ident: null, elevationFt: null, lengthFt: 4921 } as never },
    });
    // lowest 470 - 0.5 * 318.4 = 311 ft
    expect(window.bottomFt).toBe(0);
    expect(window.topFt % 500).toBe(0);
  });
});

describe("floors under an approach", () => {
  const facts = {
    stepDowns: [{ name: "2.5 NM", distanceNm: 2.5, limitFt: 1300 }] as never,
    minimum: { kind: "descent", altitudeFt: 900 } as never,
  };

  it("a step-down holds from the fix to its place, the minimum from there to the missed approach point", () => {
    const { facts: told } = inventApproach({ facts: { ...facts, outcome: "missed" } }).exercise;
    expect(floors(told!, { farNm: 6 })).toEqual([
      { fromNm: 5, toNm: 2.5, altitudeFt: 1300, isMinimum: false },
      { fromNm: 2.5, toNm: 0, altitudeFt: 900, isMinimum: true },
    ]);
  });

  it("who lands leaves the minimum at the visual descent point (FAA AIM 5-4-5: not below it before that point, from memory)", () => {
    const descent = { visualDescentPointNm: 1.35 } as never;
    const { facts: told } = inventApproach({ facts: { ...facts, descent } }).exercise;
    expect(floors(told!, { farNm: 6 }).at(-1)).toMatchObject({ toNm: 1.35, isMinimum: true });
  });

  it("a decision altitude is no floor", () => {
    const { facts: told } = inventApproach({
      facts: { minimum: { kind: "decision", altitudeFt: 620 } as never },
    }).exercise;
    expect(floors(told!, { farNm: 6 })).toEqual([]);
  });
});

describe("rows of an approach", () => {
  it("a place on the profile is the row flown there; beside the log it is none", () => {
    const { series } = inventApproach();
    // a row a tenth of a mile from 10 NM: 2.5 NM is the 75th after the first
    expect(rowAtDistance(series, 2.5)).toBe(75);
    expect(rowAtDistance(series, 12)).toBeNull();
  });

  it("the way out before a procedure turn is neither drawn along the final nor pointed at", () => {
    const { series } = inventApproach();
    series.trackAngleErrorDeg.fill(180, 0, 40);
    // the outbound rows cover 2 to 6 NM as well
    for (let i = 0; i < 40; i++) series.distanceToThresholdNm[i] = 2 + i / 10;
    expect(stretchesAlong(series)[0]).toMatchObject({ from: 40 });
    expect(rowAtDistance(series, 2.5)).toBe(75);
  });

  it("stretches meet: a line of one weight ends where the next begins", () => {
    const stretches = stretchesAlong(inventApproach().series);
    expect(stretches.map(({ judged }) => judged)).toEqual([false, true, false]);
    expect(stretches[0]!.to - 1).toBe(stretches[1]!.from);
  });

  it("what lies beyond a limit is cut where the line crosses it", () => {
    const line: Point[] = [
      [0, 0],
      [10, 10],
      [20, 0],
    ];
    // crosses 5 half-way up and half-way down
    expect(beyondLimit(line, 5, 1).slice(0, 3)).toEqual([
      [5, 5],
      [10, 10],
      [15, 5],
    ]);
    expect(beyondLimit(line, -5, -1)).toEqual([]);
  });

  it("the limit drawn is that of the standard for that needle, else three quarters", () => {
    expect(needleLimit([], "approach-needle")).toBe(0.75);
    const verdicts = [
      { criterion: "approach-needle", limit: 0.5 },
      { criterion: "approach-glide-path", limit: 1 },
    ] as never;
    expect(needleLimit(verdicts, "approach-glide-path")).toBe(1);
  });
});

describe("the plan of an approach", () => {
  it("course-up at 1 NM = 20 mm: the runway on top, right of course to the right", () => {
    const { exercise, series } = inventApproach();
    const { place, mmPerMile } = approachPlanFrame(exercise.facts!, series, 720, 20);
    expect(mmPerMile).toBe(20);
    near(place(0, 1)[1] - place(0, 0)[1], 20 * PX_PER_MM, 1e-9, "px");
    near(place(1, 3)[0] - place(0, 3)[0], 20 * PX_PER_MM, 1e-9, "px");
  });

  it("fits a page of A4 (ISO 216: 297 mm, less margins of 31 mm) even where it was joined 15 NM out", () => {
    const { exercise, series } = inventApproach({ fromNm: 17, joinedNm: 15 });
    const { height, mmPerMile } = approachPlanFrame(exercise.facts!, series, 720, 20);
    expect(height).toBeLessThan((297 - 31) * PX_PER_MM);
    expect(mmPerMile).toBeLessThan(20);
  });
});

/** Profile of a descent: fixed scales, and the constant descents that would have fitted. */
import { describe, expect, it } from "vitest";
import type { DescentFacts, DescentSeries } from "../../../src/index.ts";
import { heightOnConstant } from "../../../web/drawings/constantDescent.ts";
import { descentLayout } from "../../../web/drawings/descentLayout.ts";
import { heightDoubts } from "../../../web/drawings/heightDoubt.ts";
import { stripY } from "../../../web/drawings/Strip.tsx";
import { fixedScales } from "../../../web/drawings/scale.ts";
import { near } from "../../support/near.ts";

// CSS Values and Units 3, 5.2: 25.4 mm are 96 px
const PX_PER_MM = 96 / 25.4;
const START = Date.UTC(2026, 9, 18, 1, 0);

/** 90 kt over the ground, so 1.5 NM a minute, from 10 NM before the point to 2 past it; a row every 20 s. */
function descent(topFt = 4000, beginNm = 6): { facts: DescentFacts; series: DescentSeries } {
  const n = 25;
  const toGo = Float64Array.from({ length: n }, (_, i) => 10 - i / 2);
  const facts = {
    fix: "BELVO",
    toFt: 2000,
    beforeNm: 1,
    crossing: {
      utc: new Date(START + 20 * 20_000).toISOString(),
      altitudeFt: 2000,
      overFt: 0,
      doubt95Ft: 150,
    },
    began: { toGoNm: beginNm },
    reached: null,
    constant: [],
  } as unknown as DescentFacts;
  const series = {
    timeMs: Float64Array.from({ length: n }, (_, i) => START + i * 20_000),
    distanceToGoNm: toGo,
    altitudeFt: toGo.map((nm) => Math.min(topFt, 2000 + Math.max(0, nm) * 318)),
    judged: new Uint8Array(n).fill(1),
  } as unknown as DescentSeries;
  return { facts, series };
}

describe("the profile of a descent", () => {
  it("1 NM = 10 mm, 1,000 ft = 20 mm and 1,000 ft/min = 10 mm, whatever was flown", () => {
    for (const [topFt, beginNm] of [
      [4000, 6],
      [3000, 3],
      [6500, 12],
    ] as const) {
      const { facts, series } = descent(topFt, beginNm);
      const l = descentLayout(facts, series, 720, fixedScales(false), false);
      near(l.x(0) - l.x(1), 10 * PX_PER_MM, 1e-9, "px");
      near(l.y(2000) - l.y(3000), 20 * PX_PER_MM, 1e-9, "px");
      near(stripY(l.rate, 1000) - stripY(l.rate, 0), 10 * PX_PER_MM, 1e-9, "px");
      expect(l.x(-1)).toBeLessThan(l.right);
    }
  });

  it("one from high up takes the next smaller scale, whole", () => {
    const { facts, series } = descent(4000, 30);
    series.altitudeFt.fill(20_000, 0, 4);
    const l = descentLayout(facts, series, 720, fixedScales(false), false);
    expect(l.width).toBeLessThanOrEqual(720);
    expect(l.mmPerMile).toBeLessThan(10);
    expect(l.mmPerThousandFeet).toBeLessThan(20);
    expect(l.y(20_000)).toBeGreaterThanOrEqual(l.top);
  });
});

describe("what an altimeter may have shown", () => {
  const { facts, series } = descent();
  it("grows with the height: 4 ft for each 1,000 ft and degree (common practice, no source), 15 degrees, beside 75 ft and 43 ft", () => {
    const doubts = heightDoubts(
      { crossing: { ...facts.crossing!, doubt95Ft: Math.hypot(43, 75, 120) } },
      Float64Array.of(2000, 8000),
    )!;
    near(doubts[0]!, Math.hypot(43, 75, 2 * 60), 0.5, "ft");
    near(doubts[1]!, Math.hypot(43, 75, 8 * 60), 0.5, "ft");
  });
  it("a setting that is not known counts at every height alike", () => {
    const crossing = { ...facts.crossing!, doubt95Ft: Math.hypot(43, 75, 120, 600) };
    const [low, high] = heightDoubts({ crossing }, Float64Array.of(2000, 8000))!;
    near(low!, Math.hypot(43, 75, 120, 600), 0.5, "ft");
    near(high!, Math.hypot(43, 75, 480, 600), 0.5, "ft");
  });
  it("what a silence hides at the crossing is no doubt of the heights that were logged", () => {
    const crossing = { ...facts.crossing!, doubt95Ft: Math.hypot(43, 75, 120) + 260, unseenFt: 260 };
    near(heightDoubts({ crossing }, Float64Array.of(2000))![0]!, Math.hypot(43, 75, 120), 0.5, "ft");
  });
  it("is not told without a crossing", () => {
    expect(heightDoubts({ crossing: null }, series.altitudeFt)).toBeNull();
  });
});

describe("constant descents", () => {
  const { facts, series } = descent();

  it("3 degrees are 318 ft/NM (FAA AIM, the rule of the table): 1,590 ft over the height 5 NM before", () => {
    const usual = { basis: "usual-gradient", downFpm: 477, downFtPerNm: 318, beginToGoNm: 6 } as never;
    expect(series.distanceToGoNm[10]).toBe(5);
    near(heightOnConstant(usual, facts, series, 10), 2000 + 1590, 1e-9, "ft");
  });

  it("500 ft/min for the 2 min that 3 NM take at 90 kt: 1,000 ft over the height, nothing before it begins or past the point", () => {
    const rate = { basis: "usual-rate", downFpm: 500, downFtPerNm: 333, beginToGoNm: 4 } as never;
    near(heightOnConstant(rate, facts, series, 14), 3000, 1e-9, "ft");
    expect(heightOnConstant(rate, facts, series, 2)).toBeNaN();
    expect(heightOnConstant(rate, facts, series, 22)).toBeNaN();
  });
});

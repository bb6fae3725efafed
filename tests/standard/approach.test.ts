/** Published numbers of approaches against the printed ones and against each other, with the traps of their sources. */
import { describe, expect, it } from "vitest";
import {
  GLIDE_PATH,
  LNAV,
  LOCALIZER,
  LOCALIZER_BY_ANTENNA,
  SATELLITE_ANGULAR,
} from "../../src/standard/approach-guidance.ts";
import {
  FINAL_GRADIENT,
  GRADIENT_TABLE,
  RATE_RULE,
  RATE_TABLE,
  VISUAL_POINT_EXAMPLES,
  VISUAL_POINT_RULE,
} from "../../src/standard/descent.ts";
import { GATES, NOT_SHOWN, STABILISED } from "../../src/standard/stabilised.ts";
import type { TestStandard } from "../../src/standard/test-standard.ts";
import { ACS_8B_NEEDLE, TEST_STANDARDS } from "../../src/standard/tolerance.ts";
import { near } from "../support/near.ts";

const RAD = Math.PI / 180;
/** Feet a minute for one knot: 6076.115 ft in 60 min. */
const PER_KNOT = 1852 / 0.3048 / 60;

describe("US government rate-of-descent table (older volumes)", () => {
  const cells = RATE_TABLE.rows.flatMap(({ angle, rates }) =>
    rates.map((rate, i) => ({ angle, rate, speed: RATE_TABLE.speeds[i]! })),
  );
  it("has 63 cells, all multiples of 5", () => {
    expect(cells.length).toBe(63);
    expect(cells.every((c) => c.rate % 5 === 0)).toBe(true);
  });
  it("follows the sine within its rounding, 3.1 ft/min, and not the tangent, which is 10 off at 6 degrees", () => {
    for (const { angle, rate, speed } of cells)
      near(rate, speed * PER_KNOT * Math.sin(angle * RAD), 3.1, "ft/min", `${angle} deg ${speed} kt`);
    const worst = Math.max(
      ...cells.map((c) => Math.abs(c.rate - c.speed * PER_KNOT * Math.tan(c.angle * RAD))),
    );
    expect(worst).toBeGreaterThan(10);
  });
  it("the rule of five times the ground speed (common practice) is 6 % low at 3 degrees", () => {
    near(RATE_RULE.perKnot, PER_KNOT * Math.tan(3 * RAD), 0.31, "ft/min per kt");
  });
});

describe("US climb/descent table and FAA Order 8260.3: feet a nautical mile are the tangent", () => {
  it.each(GRADIENT_TABLE.rows)("$angle degrees: $gradient ft/NM", ({ angle, gradient }) => {
    near(gradient, (1852 / 0.3048) * Math.tan(angle * RAD), 0.5, "ft/NM");
  });
  it("3 degrees is 318 ft/NM, the optimum; the most, 400 ft/NM, is 3.77 degrees", () => {
    expect(FINAL_GRADIENT.optimum).toBe(318);
    near(Math.atan(FINAL_GRADIENT.most / (1852 / 0.3048)) / RAD, 3.77, 0.005, "deg");
  });
});

describe("visual descent points, printed examples", () => {
  it.each(VISUAL_POINT_EXAMPLES)(
    "$height ft: $distance NM",
    ({ height, distance, feetPerMile, groundSpeed, seconds }) => {
      for (const gradient of feetPerMile) near(distance, height / gradient, 0.05, "NM");
      if (groundSpeed !== null) near((distance / groundSpeed) * 3600, seconds!, 0.5, "s");
    },
  );
  it("trap: the rule of 300 (common practice) puts the first three 0.2 to 0.4 NM farther out than they were printed", () => {
    for (const { height, distance } of VISUAL_POINT_EXAMPLES.slice(0, 3)) {
      expect(height / VISUAL_POINT_RULE.feetPerMile - distance).toBeGreaterThan(0.19);
    }
  });
});

describe("full scale", () => {
  it("FAA AIM 1-1-9: a localizer is 700 ft wide in all, 3 to 6 degrees, a glide path 1.4 degrees", () => {
    expect([LOCALIZER.widthAtThreshold, LOCALIZER.leastWidth, LOCALIZER.mostWidth]).toEqual([700, 3, 6]);
    expect(GLIDE_PATH.fullScale).toBe(1.4 / 2);
  });
  it.each(LOCALIZER_BY_ANTENNA)("antenna at $antenna ft: half angle $half degrees", ({ antenna, half }) => {
    near(Math.atan(350 / antenna) / RAD, half, 0.0006, "deg");
  });
  it("FAA AIM 1-1-17 and 1-1-18: 1 NM to 0.3 NM over 2 NM; LPV at most 0.3 NM, 700 ft at the threshold", () => {
    expect([LNAV.terminal, LNAV.final, LNAV.ramp]).toEqual([1, 0.3, 2]);
    expect([SATELLITE_ANGULAR.most, SATELLITE_ANGULAR.widthAtThreshold]).toEqual([0.3, 700]);
  });
});

describe("tolerances and stabilised criteria", () => {
  const [us, eu] = ["instrument-rating-us", "instrument-rating-eu"].map((id) => {
    const { approach, arc, descent } = TEST_STANDARDS.find((standard) => standard.id === id)!;
    return { approach, arc, descent };
  }) as [TestStandard, TestStandard];
  it('trap: FAA-S-ACS-8B says "less than" three quarters, 8C "within"', () => {
    expect(ACS_8B_NEEDLE).toMatchObject({ limit: 0.75, edge: "less-than" });
    expect(us.approach.needle).toMatchObject({ limit: 0.75, edge: "within" });
    expect(ACS_8B_NEEDLE.citation).toContain("8B");
    expect(us.approach.needle!.citation).toContain("8C");
  });
  it("FAA-S-ACS-8C VI.A.S12 and VI.B.S12: three quarters lateral and vertical, +100/-0 ft; V.A.S6: arc 1 NM; V.B.S7: ±100 ft", () => {
    const { needle, glidePath, minimumDescent, decision, barometricPath } = us.approach;
    expect([needle!.limit, glidePath!.limit]).toEqual([0.75, 0.75]);
    expect([minimumDescent.above!.limit, minimumDescent.below!.limit]).toEqual([100, 0]);
    expect([decision.above, decision.below, barometricPath]).toEqual([null, null, null]);
    expect(us.approach.stepDown!.limit).toBe(0);
    expect([us.arc.distance!.limit, us.descent.altitude!.limit]).toEqual([1, 100]);
  });
  it("Part-FCL Appendix 7: half scale, +50/-0 ft at the minimum, 75 ft below a path by the altimeter, 75 ft above it low down", () => {
    const { needle, briefly, glidePath, minimumDescent, decision, barometricPath } = eu.approach;
    expect([needle!.limit, briefly!.limit, glidePath!.limit]).toEqual([0.5, 1, 0.5]);
    for (const minimum of [minimumDescent, decision])
      expect([minimum.above!.limit, minimum.below!.limit]).toEqual([50, 0]);
    expect([barometricPath!.below.limit, barometricPath!.aboveLow.limit]).toEqual([75, 75]);
    expect([eu.arc.distance, eu.descent.altitude!.limit]).toEqual([null, 100]);
  });
  it("the gates' numbers are those of the stabilised criteria, whose half scale and 1,000 ft/min all three texts share", () => {
    for (const { approach } of [us, eu]) {
      expect(approach.gates.sink!.limit).toBe(STABILISED[0]!.mostSink);
      expect(approach.gates.needle!.limit).toBe(STABILISED.find((s) => s.id === "transport-canada")!.lateral);
    }
  });
  it("Flight Safety Foundation, FAA handbook and TP 9939: 1,000 and 500 ft, 1,000 ft/min; a log cannot show the rest", () => {
    expect(GATES).toEqual([1000, 500]);
    for (const s of STABILISED) expect([s.instrument, s.visual, s.mostSink]).toEqual([1000, 500, 1000]);
    expect(STABILISED.find((s) => s.id === "faa-handbook")!.mostBankLow).toBe(15);
    expect(NOT_SHOWN).toContain("indicated-airspeed");
  });
});

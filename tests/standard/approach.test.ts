/** Published numbers of approaches against the printed ones and against each other, with the traps of their sources. */
import { describe, expect, it } from "vitest";
import {
  GLIDE_PATH,
  LNAV,
  LOCALIZER,
  LOCALIZER_BY_ANTENNA,
  SATELLITE_ANGULAR,
} from "../../src/standard/approach-guidance.ts";
import { APPROACH_TOLERANCES, ARC_TOLERANCE } from "../../src/standard/approach-tolerances.ts";
import {
  FINAL_GRADIENT,
  GRADIENT_TABLE,
  RATE_RULE,
  RATE_TABLE,
  VISUAL_POINT_EXAMPLES,
  VISUAL_POINT_RULE,
} from "../../src/standard/descent.ts";
import { GATES, NOT_SHOWN, STABILISED } from "../../src/standard/stabilised.ts";
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
  it('trap: FAA-S-ACS-8B says "less than" three quarters, 8C "within"', () => {
    const edge = (standard: string) =>
      APPROACH_TOLERANCES.find((t) => t.standard === standard && t.part === "non-precision-final")!;
    expect(edge("acs-8b")).toMatchObject({
      edge: "less-than",
      lateral: 0.75,
      altitudeOver: 100,
      altitudeUnder: 0,
    });
    expect(edge("acs-8c")).toMatchObject({
      edge: "within",
      lateral: 0.75,
      altitudeOver: 100,
      altitudeUnder: 0,
    });
  });
  it("FAA-S-ACS-8C VI.B.S12: three quarters lateral and vertical; V.A.S6: arc 1 NM", () => {
    const t = APPROACH_TOLERANCES.find((x) => x.standard === "acs-8c" && x.part === "precision-final")!;
    expect([t.lateral, t.vertical, t.speed]).toEqual([0.75, 0.75, 10]);
    expect(ARC_TOLERANCE.distance).toBe(1);
  });
  it("Part-FCL Appendix 7: half scale, +50/-0 ft at decision, 75 ft below a linear path at most", () => {
    const of = (part: string) =>
      APPROACH_TOLERANCES.find((x) => x.standard === "part-fcl" && x.part === part)!;
    expect([of("angular-final").lateral, of("angular-final").vertical]).toEqual([0.5, 0.5]);
    expect([of("decision").altitudeOver, of("decision").altitudeUnder]).toEqual([50, 0]);
    expect(of("linear-final").altitudeUnder).toBe(75);
  });
  it("Flight Safety Foundation, FAA handbook and TP 9939: 1,000 and 500 ft, 1,000 ft/min; a log cannot show the rest", () => {
    expect(GATES).toEqual([1000, 500]);
    for (const s of STABILISED) expect([s.instrument, s.visual, s.mostSink]).toEqual([1000, 500, 1000]);
    expect(STABILISED.find((s) => s.id === "faa-handbook")!.mostBankLow).toBe(15);
    expect(NOT_SHOWN).toContain("indicated-airspeed");
  });
});

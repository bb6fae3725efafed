/** Verdicts of approaches, arcs and descents on facts made by hand: each limit by its clause, and what cannot be told. */
import { describe, expect, it } from "vitest";
import type { ApproachFacts } from "../../src/approach/facts.ts";
import type { ArcFacts } from "../../src/course/arc-facts.ts";
import type { DescentFacts } from "../../src/course/descent-facts.ts";
import { gradeApproach, gradeArc, gradeDescent, standardNamed } from "../../src/grade/index.ts";
import type { Verdict } from "../../src/grade/verdict.ts";
import { verdictSentence } from "../../src/report/index.ts";
import type { TestStandard } from "../../src/standard/test-standard.ts";

const us = standardNamed("instrument-rating-us")!;
const eu = standardNamed("instrument-rating-eu")!;
const UTC = "2026-10-17T09:44:00.000Z";

interface Case {
  readonly needle?: number;
  readonly path?: number;
  /** Where it is surest; as `path` where not given. */
  readonly surest?: number;
  /** The glide path belongs to the guidance. */
  readonly supposed?: boolean;
  readonly guidance?: "localizer" | "lnav" | "lnav-vnav";
  /** Farthest below the path and above it low down, feet, ± 40. */
  readonly below?: number;
  readonly aboveLow?: number;
  readonly fixFt?: number;
  readonly minimum?: "descent" | "decision";
  /** Lowest (descent) or where the climb began (decision), less the minimum; the altimeter's doubt. */
  readonly margin?: number;
  readonly altimeter95?: number;
  /** Lowest before each step-down, less its height. */
  readonly steps?: readonly (number | null)[];
  /** It was passed on the way down; else never, though the log is whole. */
  readonly passed?: boolean;
  readonly outcome?: ApproachFacts["outcome"];
  /** Where the climb away was begun, miles before the threshold. */
  readonly climbNm?: number;
  readonly sink?: number;
  readonly heights?: boolean;
}

function facts(c: Case): ApproachFacts {
  const {
    guidance = "localizer",
    minimum = "descent",
    margin = 20,
    altimeter95 = 90,
    outcome = "missed",
  } = c;
  const needle = (max: number) => ({
    max,
    maxUtc: UTC,
    doubt95: 0.04,
    beyondHalf: Math.abs(max) > 0.5 ? 0.2 : 0,
    beyondThreeQuarter: Math.abs(max) > 0.75 ? 0.1 : 0,
    beyondFull: 0,
  });
  const extreme = (ft: number | undefined) => (ft === undefined ? null : { ft, doubt95Ft: 40, utc: UTC });
  const gate = (heightFt: number) => ({
    heightFt,
    utc: UTC,
    lateral: { value: c.needle ?? 0, doubt95: 0.04 },
    vertical: { value: c.path ?? 0, doubt95: 0.1 },
    verticalFpm: -(c.sink ?? 480),
    vertical95Fpm: 70,
  });
  const heights = c.heights !== false;
  return {
    guidance: { kind: guidance, halfAngleDeg: guidance === "lnav" ? null : 2 },
    judged: { seconds: 200 },
    needle: needle(c.needle ?? 0),
    height: heights ? { anchored: "runway" } : null,
    glidePath: heights
      ? {
          supposed: c.supposed ?? false,
          needle: needle(c.path ?? 0),
          widest: { needle: c.path ?? 0, doubt95: 0.04, utc: UTC },
          surest: { needle: c.surest ?? c.path ?? 0, doubt95: 0.04, utc: UTC },
          below: extreme(c.below),
          aboveLow: extreme(c.aboveLow),
        }
      : null,
    finalFix: { altitudeFt: 2000 },
    finalFixPassage: {
      utc: UTC,
      altitudeFt: heights ? (c.fixFt ?? 2000) : null,
      altimeter95Ft: heights ? altimeter95 : null,
    },
    minimum: {
      kind: minimum,
      altitudeFt: 600,
      marginFt: margin,
      lowestFt: 600 + margin,
      doubt95Ft: 50,
      lowestUtc: UTC,
      passedNm: c.passed === false ? null : 1,
      altimeter95Ft: altimeter95,
    },
    missed: {
      altitudeFt: 600 + margin,
      altimeter95Ft: altimeter95,
      startUtc: UTC,
      distanceNm: c.climbNm ?? 1,
    },
    runway: { elevationFt: 100 },
    stepDowns: (c.steps ?? []).map((marginFt) => ({
      marginFt,
      altimeter95Ft: marginFt === null ? null : altimeter95,
      passedFt: 0,
      lowestUtc: UTC,
    })),
    outcome,
    gates: [gate(1000), gate(500)],
    cannotTell: [],
  } as unknown as ApproachFacts;
}

const one = (standard: TestStandard, id: string, c: Case): Verdict | undefined =>
  gradeApproach(facts(c), standard).find(({ criterion }) => criterion === id);

describe("FAA-S-ACS-8C VI.A.S12, VI.B.S12: at most three quarters of the scale, lateral and vertical", () => {
  it.each([
    [0.7, "met"],
    [-0.74, "cannot tell"],
    [0.8, "not met"],
  ])("needle %s, ± 0.04: %s", (needle, expected) => {
    expect(one(us, "approach-needle", { needle })).toMatchObject({ verdict: expected, limit: 0.75 });
    expect(one(us, "approach-glide-path", { path: needle })).toMatchObject({
      verdict: expected,
      limit: 0.75,
    });
  });
  it("off beyond doubt anywhere is off, though the worst lies in doubt", () => {
    expect(one(us, "approach-glide-path", { path: 0.76, surest: 0.85 })).toMatchObject({
      verdict: "not met",
      value: 0.85,
    });
  });
  it("a tenth of 200 s beyond it is told as 20 s", () => {
    expect(one(us, "approach-needle", { needle: 0.9 })!.beyondS).toBeCloseTo(20);
  });
  it("a path that belongs to no guidance is not judged", () => {
    expect(one(us, "approach-glide-path", { path: 2, supposed: true })).toBeUndefined();
    expect(one(us, "approach-gate-500-glide-path", { path: 2, supposed: true })).toBeUndefined();
  });
});

describe("Part-FCL Appendix 7: half scale; linear by the RNP value; a path by the altimeter in feet", () => {
  it("0.6 of an angular scale is not met; of a linear one it may be a brief excursion", () => {
    expect(one(eu, "approach-needle", { needle: 0.6 })!.verdict).toBe("not met");
    expect(one(eu, "approach-needle", { needle: 0.6, guidance: "lnav" })).toMatchObject({
      verdict: "cannot tell",
      reason: "brief-excursion",
    });
    expect(one(eu, "approach-needle", { needle: 1.1, guidance: "lnav" })!.verdict).toBe("not met");
  });
  it.each([
    [20, "met"],
    [60, "cannot tell"],
    [120, "not met"],
  ])("%s ft below a path by the altimeter, or above it low down, ± 40: %s", (off, expected) => {
    const c = { guidance: "lnav-vnav", below: off, aboveLow: off } as const;
    expect(one(eu, "approach-path-below", c)).toMatchObject({ verdict: expected, limit: 75, unit: "ft" });
    expect(one(eu, "approach-path-above", c)).toMatchObject({ verdict: expected, limit: 75, unit: "ft" });
    expect(one(eu, "approach-glide-path", c)).toBeUndefined();
  });
  it("never below it is met; an angular path is not held in feet", () => {
    expect(one(eu, "approach-path-below", { guidance: "lnav-vnav" })!.verdict).toBe("met");
    expect(one(eu, "approach-path-below", { below: 200 })).toBeUndefined();
  });
});

describe("the minimum: US +100/-0 ft at a minimum descent altitude; Europe +50/-0 ft, and where the climb begins", () => {
  it.each([
    ["us", "descent", -200, "not met", "met"],
    ["us", "descent", 20, "cannot tell", "met"],
    ["us", "descent", 100, "met", "cannot tell"],
    ["us", "descent", 250, "met", "not met"],
    ["eu", "descent", 20, "cannot tell", "cannot tell"],
    ["eu", "descent", 160, "met", "not met"],
    ["eu", "decision", -200, "not met", "met"],
    ["eu", "decision", 160, "met", "not met"],
  ] as const)("%s, %s %s ft, ± 90: below %s, above %s", (whose, minimum, margin, below, above) => {
    const standard = whose === "us" ? us : eu;
    const name = minimum === "descent" ? "minimum" : "decision";
    const c = { minimum, margin };
    expect(one(standard, `approach-${name}-below`, c)).toMatchObject({ verdict: below, limit: 0 });
    expect(one(standard, `approach-${name}-above`, c)!.verdict).toBe(above);
  });
  it("what a GPS height leaves open says so", () => {
    expect(one(us, "approach-minimum-below", { margin: 10 })).toMatchObject({
      verdict: "cannot tell",
      reason: "height-by-gps",
      value: -10,
    });
  });
  it("a doubt of 10 ft would tell: 30 ft above is met on both sides", () => {
    const c = { margin: 30, altimeter95: 10 };
    expect(one(us, "approach-minimum-below", c)!.verdict).toBe("met");
    expect(one(us, "approach-minimum-above", c)!.verdict).toBe("met");
  });
  it("the US standard has no number for a decision altitude: nothing is judged there", () => {
    const c = { minimum: "decision", margin: -300 } as const;
    expect(one(us, "approach-decision-below", c)).toBeUndefined();
    expect(one(us, "approach-decision-above", { ...c, margin: 300 })).toBeUndefined();
  });
  it("a step-down is a minimum altitude: the lowest of all of them counts", () => {
    expect(one(us, "approach-step-down", {})).toBeUndefined();
    expect(one(us, "approach-step-down", { steps: [20, -240] })).toMatchObject({
      ...{ verdict: "not met", value: 240, limit: 0, worstUtc: UTC },
    });
    expect(one(eu, "approach-step-down", { steps: [-40] })).toMatchObject({ reason: "height-by-gps" });
    expect(one(us, "approach-step-down", { steps: [200, 180] })!.verdict).toBe("met");
    expect(one(us, "approach-step-down", { steps: [null] })!.reason).toBe("crossing-not-known");
  });
  it("a landing leaves a minimum by right", () => {
    expect(one(us, "approach-minimum-below", { outcome: "landed" })!.reason).toBe("left-for-landing");
  });
  // Part-FCL Appendix 7 holds the go-around to the decision altitude: without one there is nothing to hold to it
  it.each(["landed", "touch-and-go"] as const)(
    "%s: no missed approach, so that nothing is judged of the decision altitude",
    (outcome) => {
      for (const side of ["below", "above"]) {
        const found = one(eu, `approach-decision-${side}`, { minimum: "decision", margin: -190, outcome })!;
        expect(found).toMatchObject({ verdict: "not flown", reason: "no-missed-approach", value: null });
        expect(verdictSentence(found)).toContain(
          "; no missed approach was flown; with the runway in sight a landing goes below it by right",
        );
      }
      expect(one(us, "approach-minimum-above", { outcome })!.reason).toBe("left-for-landing");
    },
  );
  it("a touch or a low pass: whether a missed approach was flown is not known, as the finding says", () => {
    const outcome = "touch-and-go-or-low-pass";
    for (const side of ["below", "above"])
      expect(
        one(eu, `approach-decision-${side}`, { minimum: "decision", margin: -190, outcome }),
      ).toMatchObject({ verdict: "cannot tell", reason: "maybe-touched", value: null });
    expect(one(us, "approach-minimum-above", { outcome })!.reason).toBe("left-for-landing");
  });
  it("down to 30 ft over the runway, ± 50: a touch is not ruled out, and that is said; from a mile out it is", () => {
    const low = { minimum: "decision", margin: -470 } as const;
    expect(one(eu, "approach-decision-below", { ...low, climbNm: 0.1 })).toMatchObject({
      ...{ verdict: "cannot tell", reason: "maybe-touched" },
    });
    expect(one(eu, "approach-decision-below", { ...low, climbNm: 1 })!.verdict).toBe("not met");
  });
  it.each([
    [480, 90, "not flown", "climbed-above"],
    [480, 400, "cannot tell", "minimum-not-reached"],
    [250, 90, "not met", null],
  ] as const)(
    "a climb begun %s ft above, ± %s, that never came down to it: %s",
    (margin, altimeter95, verdict, reason) => {
      for (const [minimum, name] of [
        ["descent", "minimum"],
        ["decision", "decision"],
      ] as const) {
        const c = { minimum, margin, altimeter95, passed: false };
        expect(one(eu, `approach-${name}-above`, c)).toMatchObject({ verdict, reason });
        if (margin > 300) expect(one(eu, `approach-${name}-below`, c)).toMatchObject({ verdict, reason });
      }
    },
  );
});

describe("heights and gates", () => {
  it("over the final fix ±100 ft, by the altimeter: 300 ft off is not met, 40 cannot be told", () => {
    expect(one(us, "approach-fix-height", { fixFt: 2300 })!.verdict).toBe("not met");
    expect(one(us, "approach-fix-height", { fixFt: 2040 })).toMatchObject({ reason: "height-by-gps" });
  });
  it.each([
    [600, "met"],
    [970, "cannot tell"],
    [1100, "not met"],
  ])("sinking at %s ft/min, ± 70, at the gates of the stabilised criteria: %s", (sink, expected) => {
    for (const height of [1000, 500])
      expect(one(us, `approach-gate-${height}-sink`, { sink })).toMatchObject({
        verdict: expected,
        limit: 1000,
        unit: "ft/min",
      });
  });
  it("a gate below which a climb away was begun beyond doubt was not flown, and else is not told", () => {
    const ended = (nearestFt: number, changes: object = {}) => {
      const { gates, ...rest } = facts({});
      const notPassed = gates.map((gate) => ({ ...gate, utc: null, nearestFt }));
      const approach = { ...rest, height: { doubt95Ft: 60 }, gates: notPassed, ...changes };
      return gradeApproach(approach as unknown as ApproachFacts, us).find(
        ({ criterion }) => criterion === "approach-gate-500-sink",
      );
    };
    expect(ended(100)).toMatchObject({ verdict: "not flown", reason: "climbed-above", value: null });
    expect(ended(40)).toMatchObject({ verdict: "cannot tell", reason: "gate-not-passed" });
    // a log that ends above it tells nothing of it
    expect(ended(100, { missed: null })).toMatchObject({ verdict: "cannot tell", reason: "gate-not-passed" });
  });
  it("a log without heights says so of each criterion of height, and judges the needle", () => {
    const verdicts = gradeApproach(facts({ heights: false }), us);
    expect(verdicts.find((v) => v.criterion === "approach-needle")!.verdict).toBe("met");
    for (const id of ["approach-glide-path", "approach-fix-height", "approach-minimum-below"])
      expect(verdicts.find((v) => v.criterion === id)).toMatchObject({ reason: "no-height" });
  });
  it("a log without times has neither fix nor gates: that is said, not that they were not passed", () => {
    const { gates, ...rest } = facts({});
    const untimed = {
      ...{ ...rest, finalFixPassage: null, missed: null },
      gates: gates.map((gate) => ({ ...gate, utc: null })),
      cannotTell: [{ fact: "segments", reason: "no-times" }],
    } as unknown as ApproachFacts;
    const verdicts = gradeApproach(untimed, us);
    for (const id of ["approach-fix-height", "approach-gate-500-sink", "approach-gate-1000-needle"])
      expect(
        verdicts.find((v) => v.criterion === id),
        id,
      ).toMatchObject({
        ...{ verdict: "cannot tell", reason: "no-times" },
      });
  });
  it("a log that ends on the final, well held so far, meets nothing of it for the whole", () => {
    const ends = { outcome: "log-ends", judged: { seconds: 200, ends: "end-of-match" } };
    const of = (c: Case, id: string) =>
      gradeApproach({ ...facts(c), ...ends } as ApproachFacts, us).find((v) => v.criterion === id)!;
    for (const id of ["approach-needle", "approach-glide-path"]) {
      expect(of({}, id)).toMatchObject({ verdict: "cannot tell", reason: "log-ends-on-final" });
      expect(of({ needle: 0.9, path: 0.9 }, id).verdict).toBe("not met");
    }
  });
  it("what was not flown has one line", () => {
    expect(gradeApproach(null, us).map((v) => v.verdict)).toEqual(["not flown"]);
  });
});

describe("arcs: FAA-S-ACS-8C V.A.S6, 1 NM; descents: V.B.S7 and Part-FCL Appendix 7, 100 ft", () => {
  const arc = (maxNm: number) =>
    ({
      deviation: { maxNm, doubt95Nm: 0.02, maxUtc: UTC, withinOneNm: Math.abs(maxNm) > 1 ? 0.9 : 1 },
      judged: { seconds: 300 },
      altitude: null,
    }) as unknown as ArcFacts;
  it.each([
    [0.6, "met", 0],
    [-0.99, "cannot tell", 0],
    [1.2, "not met", 30],
  ])("%s NM off the arc: %s", (off, expected, beyond) => {
    const [distance, ...heights] = gradeArc(arc(off), us);
    expect(distance).toMatchObject({ criterion: "arc-distance", verdict: expected, limit: 1, unit: "NM" });
    expect(distance!.beyondS).toBeCloseTo(beyond);
    expect(heights.map((v) => v.reason)).toEqual(["no-height", "no-height"]);
  });
  it("the European standard has no distance for an arc", () => {
    expect(gradeArc(arc(3), eu).map((v) => v.criterion)).toEqual(["arc-height-steady", "arc-height-briefed"]);
  });
  const descent = (overFt: number | null) =>
    ({
      crossing: overFt === null ? null : { overFt, doubt95Ft: 160, utc: UTC },
      cannotTell: [],
    }) as unknown as DescentFacts;
  it.each([
    [40, "cannot tell", "height-by-gps"],
    [-400, "not met", null],
    [515, "not met", null],
    [null, "cannot tell", "no-height"],
  ])("%s ft over, ± 160: %s", (over, verdict, reason) => {
    for (const standard of [us, eu])
      expect(gradeDescent(descent(over), standard)).toMatchObject([{ verdict, reason, limit: 100 }]);
  });
});

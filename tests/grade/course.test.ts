import { describe, expect, it } from "vitest";
import type { CourseFacts } from "../../src/course/facts.ts";
import { COURSE_CRITERIA } from "../../src/grade/course.ts";
import { judge } from "../../src/grade/criterion.ts";
import { gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { verdictReason } from "../../src/report/words/index.ts";
import type { TestStandard } from "../../src/standard/test-standard.ts";

const us = standardNamed("instrument-rating-us")!;
const eu = standardNamed("instrument-rating-eu")!;

interface Case {
  readonly needle: number;
  readonly scale?: "angular" | "linear";
  readonly heights?: [lowest: number, highest: number];
  readonly target?: number | null;
  /** Half-width of the altimeter's 95 %, ft. */
  readonly altimeter?: number;
}

/** A course of 300 s at 3,000 ft; the needle's 95 % doubt is 0.04, the altimeter's 200 ft. */
function facts({
  needle,
  scale = "angular",
  heights = [2980, 3020],
  target = 3000,
  altimeter = 200,
}: Case): CourseFacts {
  const beyond = (limit: number) => (Math.abs(needle) > limit ? 0.1 : 0);
  const [lowestFt, highestFt] = heights;
  return {
    form: "to",
    scale: { kind: scale },
    judged: { seconds: 300 },
    needle: {
      max: needle,
      maxUtc: "2026-10-17T09:44:00.000Z",
      doubt95: 0.04,
      beyondQuarter: beyond(0.25),
      beyondHalf: beyond(0.5),
      beyondThreeQuarter: beyond(0.75),
      beyondFull: beyond(1),
    },
    altitude: {
      targetFt: target,
      lowestFt,
      highestFt,
      change95Ft: 20,
      worstFt: highestFt,
      altimeter95Ft: altimeter,
      worstUtc: null,
    },
    cannotTell: [],
  } as unknown as CourseFacts;
}

const verdict = (standard: TestStandard, id: string, c: Case) =>
  gradeCourse(facts(c), standard).find(({ criterion }) => criterion === id);

it("a course never established on is not met by the part of it that was judged; past the limit it is still not met", () => {
  const never = (needle: number, changes: object = { neverEstablished: true }) => {
    const flown = facts({ needle });
    return gradeCourse({ ...flown, ...changes }, us).find(({ criterion }) => criterion === "course-needle")!;
  };
  expect(never(0.6)).toMatchObject({ verdict: "cannot tell", reason: "never-established", confidence: null });
  expect(verdictReason(never(0.6))).toContain("never established on");
  expect(never(0.9).verdict).toBe("not met");
  // it is the fact that counts, wherever what is judged begins: outbound it may begin a mile from the station
  const from = { ...facts({ needle: 0.6 }).judged, begins: "near-station" };
  expect(never(0.6, { neverEstablished: true, judged: from }).reason).toBe("never-established");
  expect(never(0.6, {}).verdict).toBe("met");
});

const needleOf = (standard: TestStandard, needle: number, scale: "angular" | "linear" = "angular") =>
  verdict(standard, "course-needle", { needle, scale })!;

describe("FAA-S-ACS-8C V.A.S5 and S6: at most ¾ scale, ±100 ft", () => {
  it.each([
    [0.5, "met", null],
    [-0.7, "met", null],
    [0.74, "cannot tell", "doubt-straddles-limit"],
    [-0.76, "cannot tell", "doubt-straddles-limit"],
    [0.8, "not met", null],
    [-1.3, "not met", null],
  ])("needle %s, ± 0.04: %s", (needle, expected, reason) => {
    expect(needleOf(us, needle)).toMatchObject({ verdict: expected, reason, limit: 0.75, unit: "share" });
  });

  it("says how long the needle was beyond the limit: a tenth of 300 s", () => {
    expect(needleOf(us, 0.9).beyondS).toBeCloseTo(30);
    expect(needleOf(us, 0.5).beyondS).toBe(0);
  });

  it.each([
    [[2960, 3040], "met"],
    [[2905, 3095], "cannot tell"],
    [[2850, 3100], "not met"],
  ] as const)("heights %j range about their own middle: %s", (heights, expected) => {
    const found = verdict(us, "course-height-steady", { needle: 0, heights: [...heights] });
    expect(found?.verdict).toBe(expected);
  });

  it("a GPS height cannot be held against the briefed one, unless it is far off", () => {
    expect(verdict(us, "course-height-briefed", { needle: 0 })).toMatchObject({
      verdict: "cannot tell",
      reason: "height-by-gps",
    });
    const far = { needle: 0, heights: [3280, 3300] as [number, number] };
    expect(verdict(us, "course-height-briefed", far)?.verdict).toBe("not met");
    expect(verdict(us, "course-height-briefed", { needle: 0, target: null })).toBeUndefined();
  });
});

describe("Part-FCL Appendix 7: half scale where angular; half the RNP value, brief excursions to it, where linear", () => {
  it("0.6 of an angular scale is not met", () => {
    expect(needleOf(eu, 0.6).verdict).toBe("not met");
  });
  it("0.6 of a linear scale may be a brief excursion: left to the instructor; 1.1 is none", () => {
    expect(needleOf(eu, 0.6, "linear")).toMatchObject({ verdict: "cannot tell", reason: "brief-excursion" });
    expect(needleOf(eu, 1.1, "linear").verdict).toBe("not met");
    expect(needleOf(eu, 0.4, "linear").verdict).toBe("met");
  });
});

describe("by construction", () => {
  it("what was not flown has every criterion, none of them judged", () => {
    const verdicts = gradeCourse(null, us);
    expect(verdicts.map((v) => v.criterion)).toEqual(COURSE_CRITERIA.map((c) => c.id));
    expect(verdicts.every((v) => v.verdict === "not flown" && v.value === null)).toBe(true);
  });
  it("a fitted line has no verdict, because nobody meant to fly it", () => {
    expect(gradeCourse({ ...facts({ needle: 0.9 }), form: "fitted" }, us)).toEqual([]);
  });
  it("all of it within a mile of the station cannot be told", () => {
    const near = { ...facts({ needle: 0.9 }), cannotTell: [{ fact: "needle", reason: "all-near-station" }] };
    expect(gradeCourse(near, us)[0]).toMatchObject({ verdict: "cannot tell", reason: "all-near-station" });
  });
  it("a criterion that fails inside spoils only its own line, and keeps the error for whoever mends it", () => {
    const broken = { ...facts({ needle: 0.3 }), needle: null } as unknown as CourseFacts;
    const verdicts = judge(COURSE_CRITERIA, broken, us);
    expect(verdicts[0]).toMatchObject({ verdict: "cannot tell", reason: "fault-in-criterion" });
    expect(verdicts[0]!.fault).toContain("max");
    expect(verdictReason(verdicts[0]!)).toContain(verdicts[0]!.fault);
    expect(verdicts[1]).not.toHaveProperty("fault");
    expect(verdicts[1]?.verdict).toBe("met");
  });
  it("a limit that the standard does not set is not judged", () => {
    const bare: TestStandard = { ...us, course: { needle: null, briefly: null, altitude: null } };
    expect(gradeCourse(facts({ needle: 2 }), bare)).toEqual([]);
  });
});

describe("every criterion of a course, whatever is added to the list", () => {
  const flights: Case[] = [
    { needle: 0.5 },
    { needle: 0.9 },
    { needle: 0.74, heights: [2905, 3095] },
    { needle: 0.5, heights: [2850, 3100] },
    { needle: 0.5, heights: [3280, 3300] },
    { needle: 0.5, heights: [2990, 3010], target: 3000, altimeter: 30 },
  ];
  it.each(COURSE_CRITERIA.map(({ id }) => id))(
    "%s has a flight that meets it, one that does not, one that cannot tell",
    (id) => {
      const given = new Set(flights.map((c) => verdict(us, id, c)?.verdict));
      expect([...given]).toEqual(expect.arrayContaining(["met", "not met", "cannot tell"]));
    },
  );
});

import { describe, expect, it } from "vitest";
import { courseFactsSchema } from "../../src/course/facts.ts";
import { courseExercise, measured, mirrored, type Row, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const line = (across: (nm: number) => number, from = -12, to = -2): Row[] => {
  const rows: Row[] = [];
  for (let t = 0; from + t / 36 <= to; t++) {
    rows.push({ t, along: from + t / 36, across: across(from + t / 36) });
  }
  return rows;
};

/** Smoothing may not move a straight line by more than this: 1 m. */
const METRE = 1 / 1852;

describe("by construction: a line beside the course", () => {
  it.each([0.2, -0.35])("held %s NM off for 10 NM has that as mean, rms and maximum", (d) => {
    const { facts, series } = measured(
      courseExercise("to", 241, "rnav-1"),
      line(() => d),
    );
    near(facts.crossTrack.meanNm, d, METRE, "NM");
    near(facts.crossTrack.maxNm, d, METRE, "NM");
    near(facts.crossTrack.rmsNm, Math.abs(d), METRE, "NM");
    near(facts.needle.max, d, METRE, "of full scale");
    near(facts.trackAngleError!.meanDeg, 0, 0.02, "°");
    near(facts.judged.distanceNm, 10, 0.01, "NM");
    near(facts.groundSpeedKt!, 100, 0.1, "kt");
    expect(series.crossTrackNm.length).toBe(series.judged.length);
    courseFactsSchema.parse(facts);
  });

  it("has an angular needle of atan(d / distance) / 10°, worst nearest to the station", () => {
    const { facts, series } = measured(
      courseExercise("to", 241, "vor"),
      line(() => 0.2),
    );
    const angle = (Math.atan2(0.2, 2) * 180) / Math.PI;
    near(facts.needle.max, angle / 10, 2e-3, "of full scale");
    const far = (Math.atan2(0.2, 12) * 180) / Math.PI;
    near(series.needle[0]!, far / 10, 5e-4, "of full scale");
  });

  it("is judged to a mile before the station on an angular scale, and to its end on a linear one", () => {
    const rows = line(() => 0.05, -8, 1);
    const vor = measured(courseExercise("to", 241, "vor"), rows).facts;
    expect(vor.judged.ends).toBe("near-station");
    near(vor.judged.distanceNm, 7, 0.04, "NM");
    const rnav = measured(courseExercise("to", 241, "rnav-1"), rows).facts;
    expect(rnav.judged.ends).toBe("end-of-match");
    near(rnav.judged.distanceNm, 9, 0.04, "NM");
  });

  it("outbound is judged from a mile after the station", () => {
    const { facts } = measured(
      courseExercise("from", 270, "vor"),
      line(() => 0.05, 0.2, 6),
    );
    expect(facts.judged.begins).toBe("near-station");
    near(facts.judged.distanceNm, 5, 0.06, "NM");
  });

  it("counts shares of time by hand: 0 to 1 NM off at a steady rate is half the time beyond a half", () => {
    const { facts } = measured(
      courseExercise("to", 241, "rnav-1"),
      line((nm) => (nm + 12) / 10),
    );
    near(facts.needle.beyondQuarter, 0.75, 0.005);
    near(facts.needle.beyondHalf, 0.5, 0.005);
    near(facts.needle.beyondThreeQuarter, 0.25, 0.005);
    near(facts.crossTrack.meanNm, 0.5, 0.003, "NM");
    near(facts.crossTrack.rmsNm, 1 / Math.sqrt(3), 0.003, "NM");
  });

  it("counts the same shares when every other minute is logged at 1 s and the rest at 10 s", () => {
    const all = line((nm) => (nm + 12) / 10);
    const thinned = all.filter((r) => Math.floor(r.t / 60) % 2 === 0 || r.t % 10 === 0);
    const { facts } = measured(courseExercise("to", 241, "rnav-1"), thinned);
    near(facts.needle.beyondHalf, 0.5, 0.005);
    near(facts.crossTrack.meanNm, 0.5, 0.003, "NM");
  });
});

describe("invariance: left is right in the mirror", () => {
  const rows = tracksOff({ along: -14, across: 0 }, [
    [0, 40],
    [7, 120],
    [-20, 45],
    [0, 60],
  ]);
  it("turns every side and keeps every size", () => {
    const exercise = courseExercise("to", 241, "vor");
    const right = measured(exercise, rows).facts;
    const left = measured(exercise, mirrored(rows)).facts;
    near(left.crossTrack.maxNm, -right.crossTrack.maxNm, METRE, "NM");
    near(left.needle.max, -right.needle.max, 1e-3);
    near(left.trackAngleError!.meanDeg, -right.trackAngleError!.meanDeg, 0.02, "°");
    expect(right.excursions.map((e) => e.side)).toEqual(["right"]);
    expect(left.excursions.map((e) => e.side)).toEqual(["left"]);
    near(left.excursions[0]!.leadS!, right.excursions[0]!.leadS!, 1, "s");
  });
});

describe("what cannot be told is said", () => {
  it("a log without times keeps the geometry, shares by distance, and gives no time fact", () => {
    const { facts, findings } = measured(
      courseExercise("to", 241, "rnav-1"),
      line(() => 0.2),
      false,
    );
    near(facts.crossTrack.meanNm, 0.2, 1e-4, "NM");
    expect(facts.judged.shareOf).toBe("distance");
    expect([facts.trackAngleError, facts.groundSpeedKt, facts.drift, facts.wind, facts.reversals]).toEqual(
      new Array(5).fill(null),
    );
    expect(facts.cannotTell).toContainEqual({ fact: "windCorrection", reason: "no-times" });
    expect(findings.map((f) => f.code)).toEqual(["tracked-within"]);
    courseFactsSchema.parse(facts);
  });

  it("one straight tells nothing of the wind across it: no drift, no heading, and no cause can be told", () => {
    const rows = tracksOff({ along: -14, across: 0 }, [
      [0, 40],
      [7, 160],
    ]);
    const { facts, findings, whatWouldHaveWorked } = measured(courseExercise("to", 241, "vor"), rows);
    expect([facts.drift, facts.windCorrection, whatWouldHaveWorked]).toEqual([null, null, null]);
    const reason = facts.cannotTell.find((c) => c.fact === "windCorrection")!.reason;
    expect(["wind-along-only", "wind-not-known"]).toContain(reason);
    expect(findings.map((f) => f.code)).toEqual(["drifted-before-needle", "cannot-tell", "tracked-within"]);
    expect(facts.causes).toEqual([{ cause: "cannot-tell", share: 1 }]);
  });

  it("a silence of the log is counted out and reported", () => {
    const rows = line(() => 0.1).filter((r) => r.t < 100 || r.t > 180);
    const { facts, findings } = measured(courseExercise("to", 241, "rnav-1"), rows);
    const gap = findings.find((f) => f.code === "gap-in-exercise")!;
    expect(gap.facts.longestS).toBe(82);
    near(facts.judged.seconds!, 360 - 82, 1.5, "s");
  });

  it("a span of one row is a programming error", () => {
    expect(() => measured(courseExercise("to", 241, "vor"), line(() => 0).slice(0, 1), false)).toThrow(
      RangeError,
    );
  });
});

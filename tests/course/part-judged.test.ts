/** A leg, a course or an arc of which the log shows a part, or that was left: nothing of it is met for the whole, and the sentence says how much was seen. */
import { describe, expect, it } from "vitest";
import type { ArcRecord, CourseRecord } from "../../src/debrief/document.ts";
import { gradeArc, gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { arcExercise, flyArc } from "../support/flown-arc.ts";
import { courseExercise, measured, type Row, TARNO, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
/** From TARNO to KESTI: 11.1 NM. */
const leg = courseExercise("leg", 0, "rnav-1");
const LONG = leg.course.length! / 1852;
/** At 100 kt a mile takes 36 s. */
const flown = (from: number, to: number, across = 0): Row[] =>
  tracksOff({ along: from, across }, [[0, (to - from) * 36]]);

function told(exercise: typeof leg, rows: readonly Row[], of = measured(exercise, rows)) {
  const { facts, findings } = of;
  const record = { kind: "course", facts, findings, source: "brief" } as unknown as CourseRecord;
  const verdicts = Object.fromEntries(gradeCourse(facts, us).map((v) => [v.criterion, v]));
  return { facts, verdicts, words: exerciseSentence(record) };
}

describe("by construction: a leg at 100 kt, on its course", () => {
  it("flown from fix to fix is met, and nothing is said of a part", () => {
    const { facts, verdicts, words } = told(leg, flown(0.2, LONG - 0.2));
    expect(facts.part).toBeUndefined();
    expect(verdicts["course-needle"]!.verdict).toBe("met");
    expect(words).not.toContain("judged");
  });

  it("of which the log ends in flight after 3 NM cannot be told, needle and height alike", () => {
    const { facts, verdicts, words } = told(leg, flown(0, 3));
    near(facts.part!.after!.nm, LONG - 3, 0.1, "NM");
    for (const id of ["course-needle", "course-height-steady"])
      expect(verdicts[id]).toMatchObject({ verdict: "cannot tell", reason: "log-ends-within" });
    expect(words).toContain("The log ends in flight 8.1 NM before KESTI: 3.0 NM of 11.1 NM are judged.");
  });

  it("of which the log begins in flight after 8 NM cannot be told", () => {
    const { facts, verdicts, words } = told(leg, flown(8, LONG));
    near(facts.part!.before!.nm, 8, 0.1, "NM");
    expect(verdicts["course-needle"]).toMatchObject({ verdict: "cannot tell", reason: "log-begins-within" });
    expect(words).toContain("The log begins in flight 8.0 NM after TARNO");
  });

  it("that was left by a turn after 3 NM cannot be told for the whole, and one turned off at its fix is met", () => {
    const left = (at: number) => {
      const rows = flown(0, at);
      const after = tracksOff({ along: at, across: 0 }, [
        [0, 1],
        [90, 200],
      ]).map((r) => ({ ...r, t: r.t + rows.length }));
      return told(leg, [], measured(leg, [...rows, ...after], true, 0, rows.length));
    };
    expect(left(3).verdicts["course-needle"]).toMatchObject({ verdict: "cannot tell", reason: "left-early" });
    expect(left(3).words).toContain("It was left 8.1 NM before KESTI: 3.0 NM of 11.1 NM are judged.");
    expect(left(LONG - 0.8).verdicts["course-needle"]!.verdict).toBe("met");
  });

  it("of a short one more than half of it was left: it cannot be told, though it was less than 2 NM", () => {
    const length = 3;
    const short = { ...leg, course: { ...leg.course, length: length * 1852 } };
    const rows = [...flown(0, 1.2)];
    const after = tracksOff({ along: 1.2, across: 0 }, [
      [0, 1],
      [90, 200],
    ]).map((r) => ({ ...r, t: r.t + rows.length }));
    const { facts } = told(short, [], measured(short, [...rows, ...after], true, 0, rows.length));
    expect(facts.part?.after?.why).toBe("left-early");
  });

  it("joined after the most of it cannot be told for the whole, and after the first miles of it is met", () => {
    /** From so far aside by a cut of 30 degrees, and on to the end. */
    const joined = (along: number, aside: number) => {
      const cut = aside / Math.sin(Math.PI / 6);
      const left = LONG - along - cut * Math.cos(Math.PI / 6);
      return told(
        leg,
        tracksOff({ along, across: -aside }, [
          [30, cut * 36],
          [0, left * 36],
        ]),
      );
    };
    const late = joined(3, 3); // on it 8.2 NM after its beginning
    expect(late.verdicts["course-needle"]).toMatchObject({ verdict: "cannot tell", reason: "joined-late" });
    near(late.facts.part!.before!.nm, 8, 0.6, "NM");
    expect(late.words).toMatch(/It was joined [78]\.\d NM after TARNO: [23]\.\d NM of 11\.1 NM are judged\./);
    const soon = joined(1.6, 1); // 3.3 NM after it
    near(soon.facts.judged.distanceNm, LONG - 3.3, 0.6, "NM");
    expect(soon.facts.part).toBeUndefined();
    expect(soon.verdicts["course-needle"]!.verdict).toBe("met");
  });

  it("past its limit in the part that was seen is not met all the same", () => {
    const { verdicts } = told(
      leg,
      flown(0, 3).map((r) => ({ ...r, across: r.along * 0.4 })),
    );
    expect(verdicts["course-needle"]!.verdict).toBe("not met");
  });

  it("with a time in the brief is asked for as long as that, and no longer", () => {
    const given = { start: Date.UTC(2026, 9, 17, 1), end: Date.UTC(2026, 9, 17, 1, 1, 48) };
    const rows = flown(0, 6);
    const { facts } = measured({ ...leg, between: given }, rows, true, 0, 108);
    expect(facts.part).toBeUndefined();
  });
});

describe("by construction: a course to or from a station", () => {
  it("of which the log ends 6 NM before the station cannot be told; it begins anywhere", () => {
    const { facts, verdicts } = told(courseExercise("to", 241, "vor"), flown(-15, -6));
    expect(facts.part!.before).toBeNull();
    near(facts.part!.after!.nm, 6, 0.1, "NM");
    expect(verdicts["course-needle"]).toMatchObject({ verdict: "cannot tell", reason: "log-ends-within" });
  });

  it("from it, flown to anywhere, is met; begun in flight 8 NM out it cannot be told", () => {
    const from = courseExercise("from", 270, "vor");
    expect(told(from, flown(0.3, 8)).verdicts["course-needle"]!.verdict).toBe("met");
    expect(told(from, flown(8, 14)).verdicts["course-needle"]!.reason).toBe("log-begins-within");
  });

  it("to it, and left for something else 6 NM before it, is met as far as it was flown, which is said", () => {
    const on = flown(-15, -6);
    const off = tracksOff({ along: -6, across: 0 }, [
      [0, 1],
      [90, 200],
    ]).map((r) => ({ ...r, t: r.t + on.length }));
    const to = courseExercise("to", 241, "vor");
    const { verdicts, words } = told(to, [], measured(to, [...on, ...off], true, 0, on.length));
    expect(verdicts["course-needle"]!.verdict).toBe("met");
    expect(words).toContain("It was left 6.0 NM before TARNO: 9.0 NM of it are judged.");
  });
});

describe("by construction: an arc of 90° at 10 NM", () => {
  const station = { latitude: TARNO.latitude, longitude: TARNO.longitude };
  const arc = arcExercise(station, 270, 0, "right");
  const verdict = ({ measured: { facts } }: ReturnType<typeof flyArc>) =>
    gradeArc(facts, us).find((v) => v.criterion === "arc-distance")!;

  it("flown whole is met, and of which the log ends half-way cannot be told", () => {
    expect(verdict(flyArc(arc, () => 0.1)).verdict).toBe("met");
    const half = flyArc(arc, () => 0.1, true, 0.5);
    near(half.measured.facts.part!.after!.nm, 7.85, 0.5, "NM"); // 45 degrees at 10 NM, the turn onto it counted in
    expect(verdict(half)).toMatchObject({ verdict: "cannot tell", reason: "log-ends-within" });
    const { facts, findings } = half.measured;
    const record = { kind: "arc", facts, findings, source: "brief" } as unknown as ArcRecord;
    expect(exerciseSentence(record)).toMatch(/The log ends in flight 8\.\d NM before its last radial/);
  });

  it("that was left half-way says once where, and does not call it the whole", () => {
    const half = flyArc(arcExercise(station, 270, 0, "right"), () => 0.1, true, 0.5).measured;
    const after = { nm: 7.9, why: "left-early" } as const;
    const facts = { ...half.facts, part: { ofNm: 15.7, before: null, after } };
    const cut = { leadDeg: 45, radialTrueDeg: 315, radialMagneticDeg: 315, rateDegS: 3, share: 0.5 };
    const evidence = { fromUtc: null, toUtc: null };
    const findings = [{ code: "arc-cut-short", facts: cut, evidence }];
    const words = exerciseSentence({ kind: "arc", facts, findings, source: "brief" } as unknown as ArcRecord);
    expect(words.match(/was left/g)).toHaveLength(1);
    expect(words).toMatch(/after 50 % of it\. \d\.\d NM of 15\.7 NM are judged\.$/);
  });
});

import { describe, expect, it } from "vitest";
import { TRACK_OFF_WORDS } from "../../src/report/words/track-off.ts";
import { courseExercise, measured, mirrored, secondsOf, tracksOff } from "../support/flown-course.ts";
import { near, nearDirection } from "../support/near.ts";

const drift = (off: number, seconds: number) =>
  tracksOff({ along: -15, across: 0 }, [
    [0, 60],
    [off, seconds],
  ]);

describe("common practice, no source: the track tells before the needle", () => {
  it("inbound 241 with track 246 drifts right, and is named before a quarter scale", () => {
    const { facts, findings } = measured(courseExercise("to", 241, "vor"), drift(5, 120));
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.25);
    const [found] = findings;
    expect(found!.code).toBe("drifted-before-needle");
    expect(found!.facts).toMatchObject({ side: "right", quarterReached: false, silentS: null, leadS: null });
    nearDirection(found!.facts.trackMagneticDeg as number, 246, 0.5);
    nearDirection(found!.facts.courseMagneticDeg as number, 241, 0.2);
    near(found!.facts.degrees as number, 5, 0.4, "°");
  });

  it("outbound 270 with track 258 drifts left, and is named before a quarter scale", () => {
    const rows = tracksOff({ along: 3, across: 0 }, [
      [0, 200],
      [-12, 50],
    ]);
    const { facts, findings } = measured(courseExercise("from", 270, "vor"), rows);
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.25);
    expect(findings[0]!.code).toBe("drifted-before-needle");
    expect(findings[0]!.facts).toMatchObject({ side: "left", quarterReached: false });
    nearDirection(findings[0]!.facts.trackMagneticDeg as number, 258, 1);
  });

  it("5 degrees is a small correction, and seen as one", () => {
    const rows = tracksOff({ along: -15, across: 0 }, [
      [0, 60],
      [5, 120],
      [0, 60],
    ]);
    const { facts } = measured(courseExercise("to", 241, "vor"), rows);
    near(secondsOf(facts.excursions[0]!.correctedUtc!), 180, 3, "s");
  });
});

describe("by construction: turns at 3° a second at known times", () => {
  // the track passes 3° one second after the turn begins; a quarter of 10° is where |across| = toGo tan 2.5°
  const rows = tracksOff({ along: -12, across: 0 }, [
    [0, 60],
    [8, 150],
    [-20, 60],
    [0, 60],
  ]);
  const quarterRow = rows.find((r) => r.across >= -r.along * Math.tan((2.5 * Math.PI) / 180))!;
  const worst = Math.max(...rows.map((r) => r.across));

  it.each([
    ["right", rows],
    ["left", mirrored(rows)],
  ] as const)("finds A, B, C and the worst to the %s", (side, flown) => {
    const { facts } = measured(courseExercise("to", 241, "vor"), flown);
    const [e, ...others] = facts.excursions;
    expect(others).toEqual([]);
    expect(e!.side).toBe(side);
    near(secondsOf(e!.trackOffUtc), 61, 2, "s", "A");
    near(secondsOf(e!.quarterUtc!), quarterRow.t, 1.5, "s", "B");
    near(secondsOf(e!.correctedUtc!), 210, 2, "s", "C");
    near(e!.leadS!, 149, 3, "s", "lead");
    near(e!.silentS!, quarterRow.t - 61, 3, "s", "silent");
    near(Math.abs(e!.worstCrossTrackNm), worst, 0.003, "NM");
    near(Math.abs(e!.trackErrorDeg), 8, 0.3, "°");
  });

  it("closing on the course is no excursion, whatever the angle", () => {
    const cut = tracksOff({ along: -14, across: -0.6 }, [
      [9, 130],
      [0, 60],
    ]);
    const { facts } = measured(courseExercise("to", 241, "vor"), cut);
    expect(facts.excursions).toEqual([]);
  });
});

describe("the 1-in-60 rule (stevehardie.com and jenxs.co.uk, tracking notes; usable to about 20°)", () => {
  it.each([4, 8, 15])("a track %s° off is so many sixtieths of the distance gone off course", (off) => {
    const rows = drift(off, 180);
    const begin = rows.find((r) => r.t === 60)!;
    const end = rows.at(-1)!;
    const { facts } = measured(courseExercise("to", 241, "rnav-5"), rows);
    const gone = Math.hypot(end.along - begin.along, end.across);
    // the rule is 4.5 % small at 1°, 3.4 % at 15°; the turn takes up to 5 s of 180
    near(facts.crossTrack.maxNm, (gone * off) / 60, 0.07 * ((gone * off) / 60), "NM");
  });
});

describe("by construction: the log falls silent while the track is off", () => {
  // off by 8 degrees from second 60 on, corrected from second 210 on; a quarter is reached after 100 s and more
  const rows = tracksOff({ along: -14, across: 0 }, [
    [0, 60],
    [8, 150],
    [-20, 60],
    [0, 60],
  ]);
  const silentFrom = (from: number, to: number) =>
    measured(
      courseExercise("to", 241, "vor"),
      rows.filter(({ t }) => t <= from || t >= to),
    );

  it("before the needle told and before the correction: neither is told, nor said not to have come", () => {
    const { facts, findings } = silentFrom(120, 250);
    const [e] = facts.excursions;
    expect([e!.quarterUtc, e!.correctedUtc, e!.leadS]).toEqual([null, null, null]);
    near(e!.silence!.seconds, 130, 1.5, "s");
    near(secondsOf(e!.silence!.fromUtc), 120, 1.5, "s");
    const text = TRACK_OFF_WORDS["drifted-before-needle"]!(findings[0]!.facts, findings[0]!);
    expect(text).toMatch(/stayed under a quarter for the \d+ seconds that were seen/);
    expect(text).toContain("when it was corrected is not known");
    expect(text).not.toMatch(/never|no correction/);
  });

  it("after the correction it changes nothing", () => {
    const [e] = silentFrom(232, 300).facts.excursions;
    expect(e!.silence).toBeUndefined();
    near(e!.leadS!, 149, 3, "s");
  });
});

describe("by construction: a slow drift of 2.2° in the mean, in turns of 3.6° and 1.4°", () => {
  const slow = Array.from({ length: 5 }, () => [
    [3.6, 12],
    [1.4, 20],
  ]).flat() as [number, number][];
  const rows = tracksOff({ along: -8, across: 0 }, [[0, 20], ...slow, [-20, 12], [0, 40]]);
  const quarterRow = rows.find((r) => r.across >= -r.along * Math.tan((2.5 * Math.PI) / 180))!;

  it.each([
    ["right", rows],
    ["left", mirrored(rows)],
  ] as const)(
    "that carries the needle to a quarter is told to the %s, from where it began",
    (side, flown) => {
      const { excursions } = measured(courseExercise("to", 241, "vor"), flown).facts;
      expect(excursions.map((e) => e.side)).toEqual([side]);
      const [e] = excursions;
      near(secondsOf(e!.trackOffUtc), 21, 2, "s", "A");
      near(secondsOf(e!.quarterUtc!), quarterRow.t, 1.5, "s", "B");
      near(secondsOf(e!.correctedUtc!), 180, 3, "s", "C");
      near(Math.abs(e!.trackErrorDeg), 2.2, 0.2, "°");
    },
  );

  it("is none where the needle never comes to a quarter", () => {
    const far = tracksOff({ along: -16, across: 0 }, [[0, 20], ...slow, [-20, 12], [0, 40]]);
    expect(measured(courseExercise("to", 241, "vor"), far).facts.excursions).toEqual([]);
  });

  it("is none where it only goes to and fro by as much", () => {
    const wander = Array.from({ length: 6 }, () => [
      [3.6, 16],
      [-3.6, 16],
    ]).flat() as [number, number][];
    const beside = tracksOff({ along: -6, across: 0.16 }, wander);
    expect(measured(courseExercise("to", 241, "vor"), beside).facts.excursions).toEqual([]);
  });
});

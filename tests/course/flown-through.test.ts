/** A cut that is flown through the course, and the way back to it from the other side. */
import { describe, expect, it } from "vitest";
import type { CourseRecord } from "../../src/debrief/document.ts";
import { exerciseSentence, findingSentence } from "../../src/report/index.ts";
import { courseExercise, measured, type Row, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

/** Square to the course from 1 NM left of it, at 100 kt for 80 s: 2.2 NM across, 1.2 past, and 0.4 more in the turns back. */
const through = (along: number) =>
  tracksOff({ along, across: -1 }, [
    [90, 80],
    [-45, 120],
    [0, 200],
  ]);
const farthest = (rows: readonly Row[]) => Math.max(...rows.map(({ across }) => across));

function flown(form: "to" | "from" | "leg", rows: readonly Row[], from: number) {
  const scale = form === "leg" ? "rnav-1" : "vor";
  const { facts, findings } = measured(courseExercise(form, 8, scale), rows, true, from);
  const record = { kind: "course", facts, findings, source: "brief" } as unknown as CourseRecord;
  return { facts, findings, record, words: exerciseSentence(record) };
}

describe("by construction: a course flown through", () => {
  it.each([0, 45, 75])("is told by the farthest past it, though the match begins %i s later", (from) => {
    const rows = through(2);
    const { facts, findings, words } = flown("leg", rows, from);
    near(facts.intercept!.overshootNm, farthest(rows), 0.02, "NM");
    near(facts.intercept!.angleDeg, 90, 2, "°");
    expect(findings[0]!.code).toBe("intercept-overshot");
    expect(words).toContain("past the course to the right, over full scale");
  });

  it("is told with where the turn back onto it began; one begun before the course is not called late", () => {
    const { facts, words } = flown("leg", through(2), 45);
    near(facts.intercept!.turnBeganPastNm!, -1 + (80 * 100) / 3600, 0.1, "NM");
    expect(words).toMatch(/That turn came late: it began 1\.[123]\d NM past the course\./);
    const before = tracksOff({ along: 2, across: -1 }, [
      [90, 30], // to 0.17 NM before it, from where a turn of 90° at 100 kt goes 0.36 NM past
      [0, 200],
    ]);
    const begun = flown("leg", before, 0);
    expect(begun.facts.intercept!.overshootNm).toBeGreaterThan(0.2);
    expect(begun.facts.intercept!.turnBeganPastNm).toBeUndefined();
  });

  it("is no course that was crossed on the way elsewhere: past full scale, and not where a leg begins", () => {
    const far = tracksOff({ along: -6, across: -1 }, [
      [90, 110], // 3.1 NM, where full scale is 1.1 NM at six miles: to 2 NM past
      [-45, 200],
      [0, 60],
    ]);
    const { findings } = flown("to", far, 100);
    expect(findings.map(({ code }) => code)).not.toContain("intercept-overshot");
    const near = tracksOff({ along: -12, across: -1 }, [
      [90, 60], // 1.7 NM: within full scale
      [-45, 100],
      [0, 120],
    ]);
    expect(flown("to", near, 60).findings[0]!.code).toBe("intercept-overshot");
  });

  // a half turn and more, and 1.4 times as long back at 45 degrees: line to line in 9 minutes, and in 4.7
  it.each([
    ["so long away that the cut back begins later than it may end", 200, 333],
    ["back on its way in time, and on the course too late", 90, 181],
  ])("is left for good, and the way back to it is a cut of its own: %s", (_, away, back) => {
    const rows = tracksOff({ along: 2, across: -1 }, [
      [90, 36 + away], // 1 NM to the course, at 100 kt
      [-45, back],
      [0, 200],
    ]);
    const { facts } = flown("leg", rows, 0);
    near(facts.intercept!.angleDeg, -45, 2, "°");
    near(facts.intercept!.startCrossTrackNm, farthest(rows), 0.5, "NM");
    expect(facts.intercept!.overshootNm).toBeLessThan(0.4);
  });

  it("twice, out and back within four minutes each time, is told from its first cut", () => {
    const rows = tracksOff({ along: 2, across: -1 }, [
      [90, 66], // half a minute past it
      [-60, 120], // and past it on the other side
      [45, 66],
      [0, 150],
    ]);
    const { facts } = flown("leg", rows, 0);
    near(facts.intercept!.angleDeg, 90, 2, "°");
    near(facts.intercept!.overshootNm, farthest(rows), 0.02, "NM");
  });

  it("is no turn over the station that a radial leads from", () => {
    const { facts } = flown("from", through(0.2), 75);
    expect(facts.intercept?.overshootNm ?? 0).toBeLessThan(0.1);
  });
});

/** A cut of 60 degrees from a mile left of the course, a turn that ends short of its direction on the far side, 20 degrees off for a minute and a half, and a cut back. */
const wentOn = tracksOff({ along: -16, across: -1 }, [
  [60, 42],
  [20, 90],
  [-45, 60],
  [0, 60],
]);

describe("by construction: an intercept whose turn ended and which went on past its course", () => {
  const { facts, findings, record } = flown("to", wentOn, 0);

  it("is told by where the turn ended, and by how far it went on from there and when", () => {
    const past = farthest(wentOn);
    const { intercept } = facts;
    expect(intercept!.overshootNm).toBeLessThan(past - 0.5);
    near(intercept!.wentOn!.nm, past, 0.02, "NM");
    const when = wentOn.find(({ across }) => across === past)!.t;
    near((Date.parse(intercept!.wentOn!.utc) - Date.UTC(2026, 9, 17, 1)) / 1000, when, 4, "s");
    const told = findings.find(({ code }) => code === "intercept-overshot")!;
    expect(findingSentence(told, record)).toMatch(/until the turn onto it was over, and on to \d\.\d\d NM, /);
  });

  it("of which a wander of hundredths of a mile after that turn is no going on", () => {
    const wandered = tracksOff({ along: -16, across: -1 }, [
      [60, 105],
      [1, 60],
      [-45, 100],
      [0, 60],
    ]);
    const { intercept } = flown("to", wandered, 0).facts;
    expect(farthest(wandered) - intercept!.overshootNm).toBeGreaterThan(0.01);
    expect(intercept!.wentOn).toBeUndefined();
  });

  it("has its needle by the scale of where it was farthest, not of where it was joined", () => {
    // 10 degrees of full scale at the station: the angle of what was past there, over ten
    const { intercept } = facts;
    const at = (utc: string) => wentOn[Math.round((Date.parse(utc) - Date.UTC(2026, 9, 17, 1)) / 1000)]!;
    const needle = ({ along, across }: Row) => (Math.atan2(across, -along) * 180) / Math.PI / 10;
    near(intercept!.overshootNeedle!, needle(at(intercept!.overshootUtc!)), 0.01, "");
    near(intercept!.wentOn!.needle, needle(at(intercept!.wentOn!.utc)), 0.01, "");
  });
});

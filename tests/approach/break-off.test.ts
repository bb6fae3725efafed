/** A final left by a turn away is judged as far as it was flown; one that was lost, or left in a climb, is not taken for it. */
import { describe, expect, it } from "vitest";
import { measureApproach } from "../../src/approach/index.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { APPROACH_WORDS } from "../../src/report/words/approach-finding.ts";
import { smoothTrack } from "../../src/track/index.ts";
import { approachTo, FIELD, type Row, straightIn, trackOf } from "../support/flown-approach.ts";

const MINIMUM = 500;
const exercise = approachTo(FIELD, {
  glidePath: null,
  minimum: { kind: "descent", altitude: FIELD.elevation + MINIMUM },
});
const centred = () => 0;
const level = (b: number) => Math.max(MINIMUM + 20, Math.min(1650, MINIMUM + 20 + (b - 2) * 400));

/** Legs from where rows end, each turned onto at 3 degrees a second; angles from the final course, right positive. */
function on(
  rows: Row[],
  legs: readonly (readonly [angle: number, seconds: number, fpm: number, knots?: number])[],
): Row[] {
  let { t, before, aside, height } = rows.at(-1)!;
  let angle = 0;
  const all = [...rows];
  for (const [to, seconds, fpm, knots = 90] of legs) {
    for (let k = 0; k < seconds; k++) {
      angle += Math.max(-3, Math.min(3, to - angle));
      const radians = (angle * Math.PI) / 180;
      before -= (Math.cos(radians) * knots) / 3600;
      aside += (Math.sin(radians) * knots) / 3600;
      height = Math.max(0, height + fpm / 60);
      all.push({ t: ++t, before, aside, height });
    }
  }
  return all;
}

function measured(rows: readonly Row[], until?: number, asked = exercise) {
  const motion = smoothTrack(trackOf(asked, rows))!;
  const span = { start: 0, end: until ?? motion.length };
  return measureApproach({ exercise: asked, path: motion, span, motion, wind: null });
}

describe("level at the minimum, a turn of 45 degrees to the right 1 NM before the threshold", () => {
  const down = straightIn(9, centred, level, { roll: false, to: 1 });
  const away = [
    [45, 60, 0],
    [0, 60, 0],
  ] as const;
  const landing = [
    // 1 NM aside: past the far end, back across and onto the runway the other way
    [-90, 36, -150],
    [-180, 90, -350],
    [-180, 60, 0, 10],
  ] as const;
  const circling = on(down, [...away, ...landing]);

  it("the final is judged to there, by height and needle, and the landing the other way is told", () => {
    const { facts, findings } = measured(circling, down.length + 120);
    expect([facts.outcome, facts.judged.ends]).toEqual(["left-final", "broke-off"]);
    expect(Math.abs(facts.judged.toNm - 1)).toBeLessThan(0.1);
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.15);
    expect(Math.abs(facts.minimum!.marginFt! - 20)).toBeLessThan(10);
    expect(facts.brokeOff).toMatchObject({ side: "right", landed: { way: "other-way" } });
    const found = findings.find(({ code }) => code === "left-final")!;
    expect(APPROACH_WORDS[found.code]!(found.facts, found)).toContain("; circled and landed on runway 04.");
    expect(facts.segments.map(({ kind }) => kind).slice(-2)).toEqual(["final", "left-final"]);
    expect(findings.some(({ code }) => code === "final-track-off")).toBe(false);
  });
  it("a turn to the left is the mirror of it, and without a landing none is told", () => {
    const { facts, findings } = measured(
      on(
        down,
        away.map(([angle, ...rest]) => [-angle, ...rest] as const),
      ),
    );
    expect(facts.brokeOff).toMatchObject({ side: "left", landed: null });
    // abeam the threshold along the final, half a mile aside, is no passing of the missed approach point on it
    expect(facts.missedPoint).toEqual({ distanceNm: 0, passedUtc: null });
    const found = findings.find(({ code }) => code === "left-final")!;
    expect(APPROACH_WORDS[found.code]!(found.facts, found)).toMatch(
      /^Left the final by a turn to the left 1\.0 NM before the threshold at 940 ft, the minimum 920 ft; no landing/,
    );
  });
  it("a turn begun with the climb is a missed approach", () => {
    const { facts } = measured(on(down, [[45, 120, 600]]));
    expect([facts.outcome, facts.brokeOff]).toEqual(["missed", null]);
  });
  it.each([
    [20, "missed"],
    [40, "left-final"],
  ])("level for %s s after the turn away, then a climb: %s", (seconds, outcome) => {
    const rows = on(down, [
      [45, seconds, 0],
      [45, 100, 600],
    ]);
    expect(measured(rows).facts.outcome).toBe(outcome);
  });
  it("12 degrees off until the needle is over full scale is a needle lost, and is judged", () => {
    const { facts } = measured(on(down, [[12, 36, 0]]));
    expect(facts.brokeOff).toBeNull();
    expect(Math.abs(facts.needle.max)).toBeGreaterThan(1);
  });
  it("a step-down that lay beyond the turn away was not flown to, however low it is passed beside the final", () => {
    const stepDowns = [{ name: "STEP", distance: 0.5, altitude: FIELD.elevation + MINIMUM }];
    const { facts, findings } = measured(on(down, [[30, 150, -200]]), undefined, { ...exercise, stepDowns });
    expect(facts.outcome).toBe("left-final");
    expect(facts.stepDowns[0]).toMatchObject({ passedUtc: null, passedFt: null });
    expect(findings.map(({ code }) => code)).not.toContain("below-step-down");
    const verdicts = gradeApproach(facts, standardNamed("instrument-rating-us")!);
    expect(verdicts.find((v) => v.criterion === "approach-step-down")!.verdict).toBe("not flown");
  });
  it("left or ended high above a minimum descent altitude, that was never flown down to: nothing is judged of it", () => {
    const high = straightIn(9, centred, (b) => Math.max(1300, Math.min(1650, level(b))), {
      roll: false,
      to: 3.5,
    });
    const above = (rows: readonly Row[], side: string) => {
      const { facts } = measured(rows);
      const verdicts = gradeApproach(facts, standardNamed("instrument-rating-us")!);
      const { verdict, reason } = verdicts.find((v) => v.criterion === `approach-minimum-${side}`)!;
      return [facts.outcome, verdict, reason];
    };
    const left = on(high, [
      [60, 60, 0],
      [90, 200, 0],
    ]);
    for (const side of ["above", "below"])
      expect(above(left, side)).toEqual(["left-final", "not flown", "turned-away-above"]);
    expect(above(high, "above")).toEqual(["log-ends", "cannot tell", "log-ends"]);
    expect(above(high, "below")).toEqual(["log-ends", "cannot tell", "log-ends"]);
  });
});

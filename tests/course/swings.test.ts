import { describe, expect, it } from "vitest";
import { rejoinCut } from "../../src/course/rejoin.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const codes = (rows: ReturnType<typeof tracksOff>) =>
  measured(courseExercise("to", 241, "vor"), rows).findings.map((f) => f.code);

describe("by construction: chasing and bracketing", () => {
  const swings = Array.from({ length: 10 }, (_, k) => [k % 2 ? -12 : 12, 20] as const);
  const chased = tracksOff({ along: -16, across: 0 }, [[0, 30], ...swings, [0, 60]]);

  it("ten swings of 12° each way, 20 s each, are counted with their rate, size and period", () => {
    const { facts, findings } = measured(courseExercise("to", 241, "vor"), chased);
    expect(findings[0]!.code).toBe("chased");
    // the first and the last swing have no turning point on their outer side
    expect(facts.reversals!.count).toBe(9);
    near(facts.reversals!.medianAmplitudeDeg!, 12, 0.6, "°");
    near(facts.reversals!.medianPeriodS!, 40, 2, "s");
  });

  it.each([1, 5])("26 swings of 15° and 25 s, logged every %i s: number, rate and period agree", (every) => {
    // flat tops that wander by half a degree: the farthest may be any of their rows
    const tops = Array.from({ length: 26 }, (_, k) =>
      [0.5, -0.5, 0.5, -0.5, 0.5].map((more, i) => {
        const side = k % 2 ? -1 : 1;
        const wander = (k * 7 + i * 3) % 5 === 0 ? more * 2 : more;
        return [side * (15 + wander), 5] as const;
      }),
    ).flat();
    const rows = tracksOff({ along: -24, across: 0 }, [[0, 20], ...tops, [0, 20]]);
    const { facts, findings } = measured(
      courseExercise("to", 241, "vor"),
      rows.filter((_, i) => i % every === 0),
    );
    const chased = findings.find(({ code }) => code === "chased")!;
    const { count, perMinute, medianPeriodS } = facts.reversals!;
    // 26 turning points have 25 swings between them
    near(count, 25, 1);
    near(medianPeriodS!, 50, 2, "s");
    near(perMinute * (medianPeriodS! / 2), 60, 8, "s");
    expect(chased.facts.reversals).toBe(count);
  });

  it("bracketing that converges is not chasing", () => {
    const rows = tracksOff({ along: -16, across: 0 }, [
      [0, 30],
      [20, 25],
      [-12, 25],
      [6, 25],
      [0, 120],
    ]);
    const { facts, findings } = measured(courseExercise("to", 241, "vor"), rows);
    expect(facts.reversals!.count).toBe(0);
    expect(findings.map((f) => f.code)).not.toContain("chased");
  });

  it("slow swings of 90 s each are not chasing", () => {
    const slow = Array.from({ length: 5 }, (_, k) => [k % 2 ? -6 : 6, 90] as const);
    expect(codes(tracksOff({ along: -18, across: -0.12 }, slow))).not.toContain("chased");
  });
});

describe("by construction: the intercept", () => {
  it("a 30° cut from the left that turns on time has its angle and no overshoot to speak of", () => {
    // 0.6 NM off; the turn of 30° at 3° a second displaces 0.07 NM
    const rows = tracksOff({ along: -14, across: -0.6 }, [
      [30, 38],
      [0, 120],
    ]);
    const { facts, findings } = measured(courseExercise("to", 241, "vor"), rows);
    near(facts.intercept!.angleDeg, 30, 0.5, "°");
    near(facts.intercept!.startCrossTrackNm, -0.6, 0.01, "NM");
    near(facts.intercept!.overshootNm, Math.max(0, ...rows.map((r) => r.across)), 0.01, "NM");
    expect(findings.map((f) => f.code)).not.toContain("intercept-overshot");
  });

  it("a late turn goes past the course, and says how far and to which side", () => {
    const rows = tracksOff({ along: -10, across: -0.6 }, [
      [40, 60],
      [-30, 40],
      [0, 90],
    ]);
    const past = Math.max(...rows.map((r) => r.across));
    const { facts, findings } = measured(courseExercise("to", 241, "vor"), rows);
    near(facts.intercept!.overshootNm, past, 0.01, "NM");
    expect(findings.find((f) => f.code === "intercept-overshot")!.facts.side).toBe("right");
  });

  it("a line that crosses the course at 60° is never established", () => {
    expect(codes(tracksOff({ along: -10, across: -1 }, [[60, 90]]))[0]).toBe("never-established");
  });
  it("outbound from a mile off its station as well: the fact says so, and it is not met", () => {
    const rows = tracksOff({ along: 0.2, across: 0.5 }, [[30, 160]]);
    const { facts, findings } = measured(courseExercise("from", 241, "vor"), rows);
    expect(facts.judged.begins).toBe("near-station");
    expect(facts.neverEstablished).toBe(true);
    expect(findings[0]!.code).toBe("never-established");
  });
});

describe("plane trigonometry: the cut that rejoins", () => {
  it("is the smallest that joins within the distance: 0.5 NM off at 15° takes 1.87 NM", () => {
    const { cut, distance } = rejoinCut(-0.5, 2);
    expect(cut).toBe(15);
    near(distance, 0.5 / Math.tan((15 * Math.PI) / 180), 1e-12, "NM");
  });
  it("is the largest where none is enough", () => expect(rejoinCut(2, 0.5).cut).toBe(45));
});

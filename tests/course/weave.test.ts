/** A slow weave across a course, flown by ruler and by simulation: one finding, and no wind blamed for both sides. */
import { describe, expect, it } from "vitest";
import { flyScenario, scenarioNamed } from "../../src/simulator/index.ts";
import { debriefOf } from "../support/debriefed.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";
import { near } from "../support/near.ts";

const WIND = /wind-uncorrected|under-corrected|over-corrected|corrected-wrong-way/;

describe("by ruler: tracks 8° to one side for 60 s and to the other for 60 s", () => {
  const swings = (n: number): [number, number][] =>
    Array.from({ length: n }, (_, k) => [k % 2 === 0 ? 8 : -8, 60]);
  const begin = { along: 0, across: 0 };
  const leg = courseExercise("leg", 0, "rnav-1");
  const on = (parts: [number, number][]) =>
    measured(leg, tracksOff(begin, [[0, 40], [8, 30], ...swings(parts.length + 1).slice(1), [0, 60]]));

  it("six times is one finding, told with its swings, and nothing is said of each side", () => {
    const { facts, findings } = on(swings(6));
    expect(findings[0]!.code).toBe("chased");
    expect(findings.filter(({ code }) => code !== "chased").map(({ code }) => code)).toEqual([
      "tracked-within",
    ]);
    near(facts.reversals!.medianPeriodS!, 120, 12, "s");
    near(facts.reversals!.medianAmplitudeDeg!, 8, 1.5, "°");
    expect(findings[0]!.facts.reversals).toBe(facts.reversals!.count);
    for (const { causes } of facts.excursions) expect(causes).toEqual([{ cause: "chased", share: 1 }]);
  });

  it("once to one side and once back to the other is none", () => {
    const { findings } = on(swings(2));
    expect(findings.map(({ code }) => code)).not.toContain("chased");
  });
});

describe.each([1, 2, 3, 4])(
  "by simulation, a needle chased with a period of 130 s in 16 kt, seed %d",
  (seed) => {
    it("no course is told of the wind to both sides", async () => {
      const { script } = scenarioNamed("needle-chased");
      const { gpx, brief } = flyScenario("needle-chased", seed, {
        script: script.map((step) =>
          step.do === "course"
            ? { ...step, flown: { habit: "chases", share: 0.8, period: 130, cut: 13 } }
            : step,
        ),
      });
      const { document } = await debriefOf(gpx, brief);
      const told = document.exercises.map(({ findings }) => findings.map(({ code }) => code));
      expect(told.filter((codes) => codes[0] === "chased").length).toBeGreaterThanOrEqual(2);
      for (const { findings } of document.exercises) {
        if (findings[0]?.code !== "chased") continue;
        expect(findings.filter(({ code }) => WIND.test(code))).toEqual([]);
      }
    });
  },
);

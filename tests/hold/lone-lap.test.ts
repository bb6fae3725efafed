/** A single lap that no brief asked for: it may be a hold or only a turn to lose time, and is told so. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import type { HoldRecord } from "../../src/debrief/document.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence, sideNotes } from "../../src/index.ts";
import { fly, type Step } from "../../src/simulator/index.ts";
import { arriving, between, FINAL, flown, hold, type Joined, scenarioOf } from "../support/joined.ts";

const SEEDS = [1, 2, 3];

/** The holds found without a brief. */
function found(joined: Joined, seed: number): readonly HoldRecord[] {
  const { track } = fly(scenarioOf(joined, 1), seed);
  const log = { file: "log.gpx", track, waypoints: [], routes: [], pointsSeen: track.length, issues: [] };
  const standard = standardNamed("instrument-rating-us")!;
  const { document } = debriefFlight({ log, brief: null, standard });
  return document.exercises.filter((exercise): exercise is HoldRecord => exercise.kind === "hold");
}

const straight = (seconds: number): Step => ({ do: "heading", seconds });
/** Straight on, round by two half turns with so many seconds between them, and on. */
const losingTime = (seconds: number): Joined => ({
  name: "a turn to lose time",
  start: arriving("TARNO", FINAL, 5, 3000),
  parts: [
    between(
      straight(180),
      { do: "turn", by: 180 },
      straight(seconds),
      { do: "turn", by: 180 },
      straight(seconds),
      straight(180),
    ),
  ],
});

describe("by simulation: two half turns on the way, to lose time", () => {
  it.each(SEEDS)("are told as a lap that may be just that, without entry and fix, seed %i", (seed) => {
    for (const seconds of [45, 60]) {
      for (const lap of found(losingTime(seconds), seed)) {
        expect(exerciseSentence(lap)).toBe("One lap, maybe only a turn to lose time.");
        expect(lap.title).toMatch(/^One lap to the right, back on \d{3}°M$/);
        expect(lap.facts!.entry).toBeNull();
        expect(lap.verdicts).toEqual([]);
        expect(sideNotes(lap).map(({ lead }) => lead)).not.toContain("Entry.");
        expect(sideNotes(lap)[0]!.text).not.toContain("NM");
      }
    }
  });

  it("are found as such a lap", () => {
    const laps = SEEDS.flatMap((seed) => [45, 60].flatMap((seconds) => found(losingTime(seconds), seed)));
    expect(laps.length).toBeGreaterThan(0);
  });
});

describe("by simulation: a hold that no brief names", () => {
  const held = (laps: number, heading: number): Joined => ({
    name: "hold",
    start: arriving("TARNO", heading, 5, 3000),
    parts: [hold("TARNO", FINAL, { laps }), between(straight(120))],
  });
  it.each(SEEDS)("of two laps has its entry and fix, seed %i", (seed) => {
    const [one] = found(held(2, FINAL + 30), seed);
    expect(one!.facts!.loneLap).toBe(false);
    expect(one!.facts!.entry).not.toBeNull();
  });

  it.each(SEEDS)("of one lap after a parallel entry, which speaks for it, too, seed %i", (seed) => {
    const [one] = found(held(1, FINAL + 235), seed);
    expect(flown(held(1, FINAL + 235), seed, 1).truth.truth.holds[0]!.entry).toBe("parallel");
    expect(one!.facts!.loneLap).toBe(false);
    expect(one!.facts!.entry).not.toBeNull();
  });
});

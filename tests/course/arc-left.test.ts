/** A turn off an arc that goes past its radial and back: the arc ends at the first of its turns, and none of it is a drift. */
import { describe, expect, it } from "vitest";
import type { ArcExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureArc } from "../../src/course/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";

describe.each([7010, 600_035, 600_077])("simulated tidy arc, seed %i", (seed) => {
  const scenario = scenarioNamed("arc-tidy");
  const { track, truth } = fly(scenario, seed);
  const motion = smoothTrack(cleanTrack(track).track)!;
  const legs = findLegs(motion);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
  const [match] = matchExercises(brief, { ...motion, legs });
  const exercise = brief.exercises[0] as ArcExercise;
  const { facts, findings } = measureArc({
    exercise,
    path: motion,
    span: match!.span!,
    motion,
    legs,
    wind: null,
  });

  it("is judged to where the turn off it truly began, within 5 s", () => {
    const began = Date.parse(truth.truth.arcs![0]!.turnOffUtc);
    expect(Math.abs(Date.parse(facts.judged.toUtc!) - began)).toBeLessThanOrEqual(5000);
    expect(Math.abs(Date.parse(facts.turnOff!.utc) - began)).toBeLessThanOrEqual(5000);
  });
  it("has no excursion, and nothing is said of one", () => {
    expect(facts.excursions).toEqual([]);
    expect(findings.map(({ code }) => code)).not.toContain("arc-track-off");
  });
});

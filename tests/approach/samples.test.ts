/** The six approaches of the simulator: each is told for what its name says, and for nothing that it was not. */
import { describe, expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { measureApproach } from "../../src/approach/index.ts";
import type { ApproachExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, SCENARIOS } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { near } from "../support/near.ts";

/** `without`: the station that is left out of the brief. */
function flown(name: string, seed: number, without = "") {
  const scenario = SCENARIOS[name]!;
  const { track, truth } = fly(scenario, seed);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
  const exercise = brief.exercises[0] as ApproachExercise;
  const motion = smoothTrack(track)!;
  const legs = findLegs(motion);
  const [match] = matchExercises(brief, { ...motion, legs });
  const wind = estimateWind(motion, legs, { airspeed: brief.aircraft, winds: [] });
  const measured = measureApproach({
    ...{ exercise, path: motion, span: match!.span!, motion, wind },
    stations: brief.fixes.filter(({ kind, ident }) => kind === "vor" && ident !== without),
  });
  approachFactsSchema.parse(JSON.parse(JSON.stringify(measured.facts)));
  return { ...measured, truth: truth.truth.approaches![0]!, codes: measured.findings.map((f) => f.code) };
}
const seeds = [1, 2, 3];

describe.each(seeds)("seed %i", (seed) => {
  it("tidy precision: landed, within half scale in both, stable at both gates", () => {
    const { facts, codes } = flown("approach-tidy-precision", seed);
    expect(facts.outcome).toBe("landed");
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.5);
    expect(codes).toEqual(["final-within", "glide-path-within", "landed"]);
    expect(facts.joinedFrom).toBe("vectors");
    near(Math.abs(facts.intercept!.angleDeg), 35, 4, "deg");
  });
  it("track chased: the reversals inside the final fix are told", () => {
    const { facts, codes } = flown("approach-track-chased", seed);
    expect(codes).toContain("final-chased");
    near(facts.reversals!.medianPeriodS!, 36, 12, "s");
    expect(facts.outcome).toBe("missed");
  });
  it("below the minimum: by how much, within the doubt of an untied height", () => {
    const { facts, codes, truth } = flown("approach-below-minimum", seed);
    expect(codes[0]).toBe("below-minimum");
    near(facts.minimum!.lowestFt!, truth.lowestFt, facts.minimum!.doubt95Ft!, "ft");
    near((Date.parse(facts.missed!.startUtc) - Date.parse(truth.missedUtc!)) / 1000, 0, 5, "s");
  });
  it("unstable and continued: high at both gates, and landed", () => {
    const { findings, facts } = flown("approach-unstable-continued", seed);
    const gates = findings.filter((f) => f.code === "unstable-at-gate");
    expect(gates.map((f) => f.facts.heightFt)).toEqual([1000, 500]);
    for (const gate of gates) expect(gate.facts).toMatchObject({ continued: true });
    expect(String(gates[0]!.facts.out)).toContain("vertical");
    expect(facts.outcome).toBe("landed");
  });
  it("step-downs: the level between, nothing below a limit, and a landing", () => {
    const { facts, codes } = flown("approach-step-downs", seed);
    expect(facts.descent!.levels.length).toBeGreaterThanOrEqual(1);
    near(facts.descent!.levels[0]!.altitudeFt, 1320, 60, "ft");
    expect(codes.filter((c) => c.startsWith("below"))).toEqual([]);
    expect([facts.outcome, facts.stepDowns.length]).toEqual(["landed", 1]);
    expect(facts.gates[0]!.vertical).toBeNull(); // no path, no vertical needle
  });
  it("along a curve that no station of the brief is the middle of: no arc", () => {
    expect(flown("approach-from-arc", seed, "TARNO").facts.joinedFrom).toBe("vectors");
  });
  it("from an arc: said so, joined before the fix", () => {
    const { facts } = flown("approach-from-arc", seed);
    expect(facts.joinedFrom).toBe("arc");
    expect(facts.finalFixPassage!.established).toBe(true);
  });
});

import { describe, expect, it } from "vitest";
import type { ArcExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { type ArcMeasured, measureArc } from "../../src/course/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import type { TrueArc } from "../../src/simulator/truth.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { arcExercise, flyArc } from "../support/flown-arc.ts";
import { near, nearDirection } from "../support/near.ts";
import { type TrueOnArc, trueOnArc } from "../support/true-arc.ts";

const PLACES = [
  ["the open sea at 35 N", { latitude: 35.6, longitude: 172.3 }],
  ["the antimeridian", { latitude: 20, longitude: 180 }],
  ["70 N", { latitude: 70, longitude: 25 }],
  ["the southern half", { latitude: -33.9, longitude: 151.2 }],
] as const;

describe.each(PLACES)("by construction: an arc flown by ruler at %s", (_, station) => {
  it.each([
    ["right", 300, 350],
    ["left", 40, 310],
  ] as const)("%s turns, radials %d to %d: 0.3 NM outside is 0.3 NM outside", (turns, from, to) => {
    const { facts, findings } = flyArc(arcExercise(station, from, to, turns), () => 0.3).measured;
    near(facts.deviation.meanNm, 0.3, 0.005, "NM");
    near(facts.deviation.rmsNm, 0.3, 0.005, "NM");
    near(facts.deviation.maxNm, 0.3, 0.02, "NM");
    expect(facts.deviation.withinQuarterNm).toBeLessThan(0.02);
    expect(facts.deviation.withinHalfNm).toBe(1);
    near(facts.trackAngleError!.meanDeg, 0, 0.3, "°");
    expect(facts.judged).toMatchObject({ begins: "joined", ends: "turn-off" });
    expect(findings.map((f) => f.code)).toContain("arc-within");
  });

  it("without times the distances are the same, and what needs times is not told", () => {
    const { facts } = flyArc(arcExercise(station, 300, 350, "right"), () => -0.4, false).measured;
    near(facts.deviation.meanNm, -0.4, 0.02, "NM");
    expect(facts.turnOff).toBeNull();
    expect(facts.cannotTell).toContainEqual({ fact: "turnOff", reason: "no-times" });
  });
});

describe("by construction: what was made of the arc", () => {
  const station = PLACES[0][1];

  it("mirrored, everything keeps its distance and changes its side", () => {
    const drift = (share: number) => 0.8 * share;
    const right = flyArc(arcExercise(station, 340, 20, "right"), drift).measured.facts;
    const left = flyArc(arcExercise(station, 20, 340, "left"), drift).measured.facts;
    near(right.deviation.meanNm, left.deviation.meanNm, 1e-3, "NM");
    near(right.trackAngleError!.meanDeg, -left.trackAngleError!.meanDeg, 0.02, "°");
    near(right.turnOff!.leadDeg, left.turnOff!.leadDeg, 0.1, "°");
  });

  it("a steady drift of 0.8 NM outward is told with its rate: its 33.5° between the turns last 210 s, so 0.23 NM a minute", () => {
    const { facts, findings } = flyArc(
      arcExercise(station, 340, 20, "right"),
      (share) => 0.8 * share,
    ).measured;
    near(facts.drift!.nmPerMin, 0.8 / (210 / 60), 0.02, "NM/min");
    expect(findings[0]!.code).toBe("arc-drifted");
    expect(findings[0]!.facts.side).toBe("outside");
  });

  it("2 NM inside of the brief's radius all the way: never joined, another distance held, and no turn of it told", () => {
    const { facts, findings } = flyArc(arcExercise(station, 300, 350, "right"), () => -2).measured;
    const never = findings.find(({ code }) => code === "arc-never-joined");
    near(Number(never?.facts.heldNm), facts.radiusNm - 2, 0.05, "NM");
    expect(findings.map(({ code }) => code).filter((code) => code.startsWith("arc-turned"))).toEqual([]);
    // it was not drifted to: the way in led there
    const drifts = findings.filter(({ code }) => /drifted|track-off|corrected|heading-off/.test(code));
    expect(drifts).toEqual([]);
    const strayed = flyArc(arcExercise(station, 300, 350, "right"), (share) => -1.5 - share).measured;
    expect(strayed.findings.find(({ code }) => code === "arc-never-joined")?.facts.heldNm).toBeNull();
  });

  it("a DME reads the slant: at 1 NM (6,076 ft) over a station 10 NM away, 0.05 NM more", () => {
    const { facts } = flyArc(arcExercise(station, 340, 20, "right"), () => 0).measured;
    near(facts.dmeReadsMoreNm!, Math.sqrt(101) - 10, 1e-3, "NM");
  });

  it("the line of the arc lies at the radius, from the first radial to the last", () => {
    const { facts } = flyArc(arcExercise(station, 340, 20, "right"), () => 0).measured;
    expect(facts.line).toHaveLength(17);
    expect(facts.sweepDeg).toBe(40);
  });

  it("a span outside the path is the caller's mistake", () => {
    const exercise = arcExercise(station, 340, 20, "right");
    const { track } = flyArc(exercise, () => 0);
    const path = { ...track, time: null };
    const given = { exercise, path, motion: null, legs: [], wind: null };
    expect(() => measureArc({ ...given, span: { start: 5, end: 6 } })).toThrow(RangeError);
    expect(() => measureArc({ ...given, span: { start: 0, end: track.length + 1 } })).toThrow(RangeError);
  });
});

interface Case {
  readonly seed: number;
  readonly measured: ArcMeasured;
  readonly truth: TrueArc;
  /** Over the rows that the measure judged. */
  readonly own: TrueOnArc;
}
const seconds = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 1000;

function flown(name: string, every: number): Case[] {
  return Array.from({ length: 12 }, (_, k) => 5100 + k).map((seed) => {
    const scenario = scenarioNamed(name, { logging: { every } });
    const { track, truth, columns } = fly(scenario, seed);
    const motion = smoothTrack(track)!;
    const legs = findLegs(motion);
    const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
    const brief = resolveBrief(readBrief(scenario.brief!, "b.yaml"), { time: track.time[0]! });
    const exercise = brief.exercises[0] as ArcExercise;
    const { span } = matchExercises(brief, { ...motion, legs })[0]!;
    const measured = measureArc({ exercise, path: motion, span: span!, motion, legs, wind });
    const { fromUtc, toUtc } = measured.facts.judged;
    const at = (utc: string) => seconds(truth.startUtc, utc);
    const own = trueOnArc(columns, exercise.fix, exercise.radius, exercise.turns, at(fromUtc!), at(toUtc!));
    return { seed, measured, truth: truth.truth.arcs![0]!, own };
  });
}

describe.each([1, 5])(
  "by simulation with known truth, logged each %d s, unseen seeds, wind to 35 kt",
  (every) => {
    describe.each(["arc-tidy", "arc-in-pieces", "arc-left-to-the-wind"])("%s", (name) => {
      const cases = flown(name, every);

      it("distance within 0.012 NM of the truth: 6 m, and three standard deviations of the receiver's slow error", () => {
        for (const { seed, measured, own } of cases) {
          const { deviation } = measured.facts;
          near(Math.abs(deviation.maxNm), Math.abs(own.maxNm), 0.012, "NM", `seed ${seed}, worst`);
          near(deviation.meanNm, own.meanNm, 0.012, "NM", `seed ${seed}, mean`);
          near(deviation.rmsNm, own.rmsNm, 0.012, "NM", `seed ${seed}, rms`);
          near(deviation.withinHalfNm, own.withinHalf, 0.06, "of the time", `seed ${seed}, within half`);
        }
      });

      it("the turns begin within 5 s (10 s where logged each 5 s), the radial of the turn off within 1° (1.7°)", () => {
        for (const { seed, measured, truth } of cases) {
          const { turnIn, turnOff } = measured.facts;
          near(seconds(truth.startUtc, turnIn!.utc), 0, every === 1 ? 5 : 10, "s", `seed ${seed}, onto`);
          near(seconds(truth.turnOffUtc, turnOff!.utc), 0, every === 1 ? 5 : 10, "s", `seed ${seed}, off`);
          nearDirection(
            turnOff!.radialTrueDeg,
            truth.turnOffRadialTrueDeg,
            every === 1 ? 1 : 1.7,
            `seed ${seed}`,
          );
          expect(turnOff!.to).toBe("inbound");
        }
      });

      it("what the lead lacked is where the turn ended, within 0.4 NM, 0.15 NM rms", () => {
        const left = cases.map(({ measured }) => {
          const { leadDeg, neededDeg, rollOutCrossTrackNm } = measured.facts.turnOff!;
          // a turn off to the right that comes late ends left of the inbound course
          return (((neededDeg! - leadDeg) * Math.PI) / 180) * 10 + rollOutCrossTrackNm;
        });
        near(Math.max(...left.map(Math.abs)), 0, 0.4, "NM");
        near(Math.sqrt(left.reduce((a, b) => a + b * b, 0) / left.length), 0, 0.15, "NM rms");
      });

      it("correction flown less needed within 0.5° of the truth; needed within its doubt, but for one in 20", () => {
        let outside = 0;
        for (const { seed, measured, own } of cases) {
          const c = measured.facts.windCorrection;
          if (!c) continue; // the wind of this flight is not known: said, not guessed
          near(c.flownDeg - c.neededDeg, own.flownDeg - own.neededDeg, 0.5, "°", `seed ${seed}`);
          if (Math.abs(c.neededDeg - own.neededDeg) > c.doubt95Deg) outside++;
        }
        expect(outside).toBeLessThanOrEqual(2);
        expect(cases.filter((c) => c.measured.facts.windCorrection).length).toBeGreaterThan(8);
      });
    });

    it("a tidy arc is told as kept, one left to the wind as drifted to the side of the wind", () => {
      for (const { measured } of flown("arc-tidy", every)) {
        expect(measured.findings.map((f) => f.code)).not.toContain("arc-wind-uncorrected");
      }
      for (const { seed, measured, own } of flown("arc-left-to-the-wind", every)) {
        const drifted = measured.findings.find((f) => f.code === "arc-drifted");
        if (Math.abs(own.maxNm) < 0.6) continue; // a smaller worst may be the turn onto it
        if (!drifted) expect.fail(`seed ${seed}: no drift told at ${own.maxNm} NM`);
        expect(drifted.facts.side).toBe(own.maxNm > 0 ? "outside" : "inside");
      }
    });
  },
);

describe("the lesson of arcs, seed 1, against its script", () => {
  it("tells the wind left alone and the turn off begun late on the first, nothing of it on the second", () => {
    const scenario = scenarioNamed("arc-to-a-radial");
    const { track } = fly(scenario, 1);
    const motion = smoothTrack(track)!;
    const legs = findLegs(motion);
    const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
    const brief = resolveBrief(readBrief(scenario.brief!, "b.yaml"), { time: track.time[0]! });
    const matches = matchExercises(brief, { ...motion, legs });
    const told = [1, 3].map((i) => {
      const exercise = brief.exercises[i] as ArcExercise;
      return measureArc({ exercise, path: motion, span: matches[i]!.span!, motion, legs, wind });
    });
    const codes = told.map((m) => m.findings.map((f) => f.code));
    expect(codes[0]).toEqual(
      expect.arrayContaining(["arc-drifted", "arc-wind-uncorrected", "arc-turned-off"]),
    );
    const off = told[0]!.findings.find((f) => f.code === "arc-turned-off")!;
    expect(off.facts.late).toBe(true);
    expect(codes[1]!.filter((c) => c !== "arc-within" && c !== "arc-turned-onto")).toEqual([]);
    // what would have worked: out of the wind from 145, the nose toward the station on radial 325
    const remedy = told[0]!.whatWouldHaveWorked!;
    expect(remedy.headings.length).toBe(6);
    for (const h of remedy.headings) {
      near(
        h.headingTrueDeg - (h.radialTrueDeg + 90 - (h.radialTrueDeg + 90 >= 360 ? 360 : 0)),
        h.correctionDeg,
        0.01,
      );
    }
  });
});

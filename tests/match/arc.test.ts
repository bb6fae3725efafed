import { describe, expect, it } from "vitest";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { type FlownPath, matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { near } from "../support/near.ts";

const SEEDS = Array.from({ length: 8 }, (_, i) => 5000 + i);
const LOGGED = [
  { log: "1 s", logging: { every: 1 }, timed: true },
  { log: "5 s", logging: { every: 5 }, timed: true },
  { log: "bare positions, 1 s", logging: { every: 1 }, timed: false },
] as const;

function matched(name: string, seed: number, logging: { every: number }, timed: boolean) {
  const scenario = scenarioNamed(name, { logging });
  const { track, truth } = fly(scenario, seed);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
  const motion = smoothTrack(track)!;
  const path: FlownPath = timed
    ? { ...motion, legs: findLegs(motion) }
    : { ...track, time: null, trackAngle: null, legs: null };
  const matches = matchExercises(brief, path);
  const utc = (row: number) => (timed ? motion : track).time[row]!;
  return { matches, truth: truth.truth, utc, brief };
}
const seconds = (from: string, to: number) => (to - Date.parse(from)) / 1000;

describe.each(LOGGED)("by simulation with known truth: an arc is found, $log", ({ logging, timed }) => {
  it.each(["arc-tidy", "arc-in-pieces", "arc-left-to-the-wind"])(
    "%s: from the turn onto it to the turn off it",
    (name) => {
      for (const seed of SEEDS) {
        const { matches, truth, utc } = matched(name, seed, logging, timed);
        const arc = truth.arcs![0]!;
        const { span, confidence } = matches[0]!;
        if (!span) expect.fail(`seed ${seed}: not found`);
        expect(confidence).toBeGreaterThan(0.45); // a badly flown one fits worse
        near(seconds(arc.startUtc, utc(span.start)), 0, 15, "s", `seed ${seed}, start`);
        near(seconds(arc.endUtc, utc(span.end - 1)), 0, 15, "s", `seed ${seed}, end`);
      }
    },
  );

  it("one flown nearly along its chord, as the wind took it, is found by its turns at both radials", () => {
    const { matches, truth, utc } = matched("arc-left-to-the-wind", 6005, logging, timed);
    const arc = truth.arcs![0]!;
    near(seconds(arc.startUtc, utc(matches[0]!.span!.start)), 0, 15, "s", "start");
    near(seconds(arc.endUtc, utc(matches[0]!.span!.end - 1)), 0, 15, "s", "end");
  });

  it("a lesson's arcs are found between its courses, each in its place", () => {
    const { matches, truth, utc } = matched("arc-to-a-radial", 5001, logging, timed);
    expect(matches.every((m) => m.span !== null)).toBe(true);
    truth.arcs!.forEach((arc, k) => {
      const { span } = matches[2 * k + 1]!;
      near(seconds(arc.startUtc, utc(span!.start)), 0, 20, "s", `${arc.title}, start`);
      near(seconds(arc.endUtc, utc(span!.end - 1)), 0, 20, "s", `${arc.title}, end`);
    });
    // the course after an arc begins where the arc was left, not after its turn
    near(seconds(truth.arcs![0]!.turnOffUtc, utc(matches[2]!.span!.start)), 0, 40, "s", "course after");
  });
});

describe.each(LOGGED)("by simulation with known truth: a descent is found, $log", ({ logging, timed }) => {
  it.each(["descent-in-time", "descent-late", "descent-early", "descent-with-level-off"])(
    "%s: from a minute before it to a minute after the fix",
    (name) => {
      for (const seed of SEEDS) {
        const { matches, truth, utc } = matched(name, seed, logging, timed);
        const descent = truth.descents![0]!;
        const { span, confidence } = matches[0]!;
        if (!span) expect.fail(`seed ${seed}: not found`);
        expect(confidence).toBeGreaterThan(0.5);
        near(seconds(descent.beganUtc!, utc(span.start)), -60, timed ? 15 : 45, "s", `seed ${seed}, start`);
        near(seconds(descent.fixUtc, utc(span.end - 1)), 60, timed ? 10 : 40, "s", `seed ${seed}, end`);
      }
    },
  );

  it("three descents of a lesson are found, each at its own fix", () => {
    const { matches, truth, utc } = matched("descent-begun-late", 5001, logging, timed);
    truth.descents!.forEach((descent, k) => {
      const { span } = matches[k]!;
      expect(span).not.toBeNull();
      expect(seconds(descent.beganUtc!, utc(span!.start))).toBeLessThan(0);
      near(seconds(descent.fixUtc, utc(span!.end - 1)), 60, timed ? 10 : 40, "s", descent.title);
    });
  });
});

describe("negative space", () => {
  const withBrief = (name: string, exercise: string) => {
    const scenario = scenarioNamed(name);
    const { track } = fly(scenario, 5000);
    const brief = resolveBrief(
      readBrief(
        `brief: 1\nfixes: { TARNO: { lat: 35.6, lon: 172.3, declination: 2.5 }, KESTI: { lat: 35.785, lon: 172.318 } }\nexercises:\n  - ${exercise}\n`,
        "b.yaml",
      ),
      { time: track.time[0]! },
    );
    const motion = smoothTrack(track)!;
    return matchExercises(brief, { ...motion, legs: findLegs(motion) })[0]!;
  };

  it("an arc flown the other way round is not taken", () => {
    expect(
      withBrief("arc-tidy", "{ arc: TARNO, radius_nm: 10, from_radial: 350, to_radial: 300 }").span,
    ).toBeNull();
  });

  it("nor one of another radius", () => {
    expect(
      withBrief("arc-tidy", "{ arc: TARNO, radius_nm: 15, from_radial: 300, to_radial: 350 }").span,
    ).toBeNull();
  });

  it("nor a straight course that passes the station at the radius", () => {
    // The leg BELVO to KESTI passes 8 NM from TARNO, where an arc from 305 to 005 would lie.
    expect(
      withBrief("calm-and-tidy", "{ arc: TARNO, radius_nm: 8, from_radial: 320, to_radial: 355 }").span,
    ).toBeNull();
  });

  it("a fix that was never passed has no descent", () => {
    expect(withBrief("descent-late", "{ descent: KESTI, to_ft: 1800 }").span).toBeNull();
  });
});

import { describe, expect, it } from "vitest";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { type FlownPath, matchExercises } from "../../src/match/index.ts";
import { fly, SCENARIOS, scenarioNamed } from "../../src/simulator/index.ts";

/** The turn onto a course lasts up to 25 s, and the truth's exercise begins with it; its end is a fix or a turn away. */
const END_WITHIN_S = 20; // a last chase of 18 s may run into the turn away

/** Lessons of courses only. */
const LESSONS = Object.keys(SCENARIOS).filter((name) => {
  const { brief, script } = scenarioNamed(name);
  const others = ["arc", "descent", "hold", "approach"];
  return brief !== null && script.every((step) => !others.includes(step.do));
});
/** Flights with a brief, whatever they do. */
const BRIEFED = Object.keys(SCENARIOS).filter((name) => scenarioNamed(name).brief !== null);

it("there are lessons to match", () => expect(LESSONS.length).toBeGreaterThanOrEqual(3));

describe.each(LESSONS)("by simulation with known truth: %s, as bare positions", (name) => {
  it.each([1, 2, 3])(
    "seed %i: each exercise ends where it ended, and has begun before it was established",
    (seed) => {
      const scenario = scenarioNamed(name);
      const { track, truth } = fly(scenario, seed);
      const start = track.time[0]!;
      const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: start });
      const { latitude, longitude } = track;
      const path: FlownPath = { time: null, latitude, longitude, trackAngle: null, legs: null };
      const matches = matchExercises(brief, path);
      expect(matches).toHaveLength(truth.truth.exercises.length);
      matches.forEach((match, i) => {
        const flown = truth.truth.exercises[i]!;
        expect(brief.exercises[i]!.title).toBe(flown.title);
        expect(match.span, flown.title).not.toBeNull();
        expect(match.confidence).toBeGreaterThan(0.5);
        const begins = track.time[match.span!.start]!;
        const ends = track.time[match.span!.end - 1]!;
        expect(begins).toBeLessThan(Date.parse(flown.establishedUtc!) + 15_000);
        expect(begins).toBeGreaterThan(Date.parse(flown.startUtc) - 60_000);
        expect(Math.abs(ends - Date.parse(flown.endUtc)) / 1000).toBeLessThan(END_WITHIN_S);
      });
    },
  );

  it("with the brief turned round, each exercise is found where it was all the same", () => {
    const scenario = scenarioNamed(name);
    for (const seed of [1, 2, 3]) {
      const { track } = fly(scenario, seed);
      const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
      const { latitude, longitude } = track;
      const path: FlownPath = { time: null, latitude, longitude, trackAngle: null, legs: null };
      const asFlown = matchExercises(brief, path);
      const turned = {
        ...brief,
        exercises: brief.exercises.toReversed().map((e, index) => ({ ...e, index })),
      };
      const matches = matchExercises(turned, path).toReversed();
      matches.forEach(({ span }, i) => {
        expect(span).not.toBeNull();
        const { start, end } = asFlown[i]!.span!;
        const shared = Math.min(end, span!.end) - Math.max(start, span!.start);
        expect(shared / Math.max(end - start, span!.end - span!.start)).toBeGreaterThan(0.8);
      });
    }
  });

  it("none of it is an exercise of the opposite course", () => {
    const scenario = scenarioNamed(name);
    const { track } = fly(scenario, 1);
    const head = scenario.brief!.slice(0, scenario.brief!.indexOf("exercises:"));
    const text = `${head}exercises:\n  - { course: 61, to: TARNO }\n  - { course: 90, to: TARNO }\n  - { leg: [KESTI, BELVO] }\n`;
    const brief = resolveBrief(readBrief(text, "brief.yaml"), { time: track.time[0]! });
    const { latitude, longitude } = track;
    const matches = matchExercises(brief, { time: null, latitude, longitude, trackAngle: null, legs: null });
    expect(matches.map((m) => m.span)).toEqual([null, null, null]);
  });
});

describe.each(BRIEFED.filter((name) => name.startsWith("approach-")))("%s, as bare positions", (name) => {
  it.each([1, 2, 3])("seed %i: found from before it was established to past the threshold", (seed) => {
    const scenario = scenarioNamed(name);
    const { track, truth } = fly(scenario, seed);
    const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
    const { latitude, longitude } = track;
    const [match] = matchExercises(brief, { time: null, latitude, longitude, trackAngle: null, legs: null });
    const [flown] = truth.truth.approaches!;
    expect(match!.confidence).toBeGreaterThan(0.5);
    expect(track.time[match!.span!.start]!).toBeLessThan(Date.parse(flown!.establishedUtc!) + 15_000);
    expect(track.time[match!.span!.end - 1]!).toBeGreaterThan(Date.parse(flown!.thresholdUtc!) + 30_000);
  });
});

import { describe, expect, it } from "vitest";
import type { DescentExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { type DescentMeasured, measureDescent } from "../../src/course/index.ts";
import type { DescentRecord } from "../../src/debrief/document.ts";
import { destination } from "../../src/geodesy/index.ts";
import { gradeDescent, standardNamed } from "../../src/grade/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { descentCause } from "../../src/report/words/descent.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import type { TrueDescent } from "../../src/simulator/truth.ts";
import { altimeterDoubt95, findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { near } from "../support/near.ts";

const START = Date.UTC(2026, 9, 17, 1, 0, 0);
const NM = 1852;

const exerciseAt = (latitude: number, longitude: number, to: number, before: number): DescentExercise => ({
  kind: "descent",
  index: 0,
  title: "Descent",
  between: null,
  altitude: null,
  fix: { ident: "BELVO", latitude, longitude, kind: "waypoint", declination: null, elevation: null },
  toAltitude: to,
  before,
});

/** What the log has; silent between two distances to go to the point. */
interface Shown {
  readonly timed?: boolean;
  readonly height?: boolean;
  readonly silentNm?: readonly [number, number];
}

/** At 120 kt from 15 NM straight over the fix, level until so many miles to go to the point, then down at a rate. */
function flyDown(
  exercise: DescentExercise,
  from: number,
  beginToGoNm: number,
  fpm: number,
  { timed = true, height = true, silentNm = [0, 0] }: Shown = {},
): DescentMeasured {
  const places: { latitude: number; longitude: number }[] = [];
  const heights: number[] = [];
  const times: number[] = [];
  let altitude = from;
  for (let i = 0; i < 520; i++) {
    const toFix = 15 - i / 30;
    const toGo = toFix - exercise.before;
    if (!(toGo < silentNm[0] && toGo > silentNm[1])) {
      places.push(destination(exercise.fix, toFix >= 0 ? 270 : 90, Math.abs(toFix) * NM));
      heights.push(height ? altitude : Number.NaN);
      times.push(timed ? START + i * 1000 : Number.NaN);
    }
    if (toFix - exercise.before <= beginToGoNm && altitude > exercise.toAltitude)
      altitude = Math.max(exercise.toAltitude, altitude - fpm / 60);
  }
  const track: Track = {
    name: "by ruler",
    kind: "simulated",
    length: places.length,
    time: Float64Array.from(times),
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
    altitude: Float64Array.from(heights),
    segment: new Int32Array(places.length),
    line: new Int32Array(places.length),
  };
  const motion = timed ? smoothTrack(track) : null;
  const path = motion ?? { ...track, time: null };
  return measureDescent({ exercise, path, span: { start: 0, end: places.length }, motion, wind: null });
}

describe("by construction: from the height itself, or from below it, nobody descends to it", () => {
  it.each([
    ["300 ft below it all the way", 5700, "descent-crossed-low"],
    ["level at it", 6000, "descent-crossed-at"],
  ])("%s", (_, height, lead) => {
    const { facts, findings } = flyDown(exerciseAt(35.6, 172.3, 6000, 1), height, 9, 500);
    expect(facts).toMatchObject({ began: null, flown: null, mostNeeded: null });
    expect(findings[0]?.code).toBe(lead);
  });
});

describe("arithmetic of a descent: 120 kt, 4,000 to 2,000 ft", () => {
  // 2,000 ft at 500 ft/min take 4 minutes, 8 NM at 120 kt: 250 ft/NM, 2.36°. 318 ft/NM: 6.29 NM.
  const exercise = exerciseAt(35.668, 172.069, 2000, 1);

  it("begun 8 NM before the point at 500 ft/min it meets the height there", () => {
    const { facts, findings } = flyDown(exercise, 4000, 8, 500);
    near(facts.crossing!.altitudeFt, 2000, 12, "ft");
    near(facts.began!.toGoNm, 8, 0.1, "NM");
    near(facts.began!.neededDownFpm!, 500, 6, "ft/min");
    near(facts.began!.neededDownFtPerNm, 250, 3, "ft/NM");
    near(facts.began!.neededDeg, 2.36, 0.03, "°");
    near(facts.flown!.meanDownFpm!, 500, 8, "ft/min");
    expect(findings[0]!.code).toBe("descent-crossed-at");
    expect(findings).toHaveLength(1);
  });

  it("constant rates: as flown and 500 ft/min begin 8 NM before it, 318 ft/NM (3°) 6.29 NM", () => {
    const { constant } = flyDown(exercise, 4000, 8, 500).facts;
    const of = (basis: string) => constant.find((c) => c.basis === basis)!;
    near(of("usual-rate").beginToGoNm!, 8, 0.05, "NM");
    near(of("usual-rate").lateS!, 0, 4, "s");
    near(of("usual-gradient").beginToGoNm!, 2000 / 318, 0.01, "NM");
    near(of("usual-gradient").lateNm!, 2000 / 318 - 8, 0.1, "NM");
    near(of("usual-gradient").downFpm!, 318 * 2, 2, "ft/min");
  });

  it("begun 2 NM late (a minute at 120 kt) it is 500 ft high and says so: 2 NM, 60 s, 667 ft/min needed", () => {
    const { facts, findings } = flyDown(exercise, 4000, 6, 500);
    near(facts.crossing!.overFt, 500, 12, "ft");
    near(facts.began!.neededDownFpm!, (2000 / 6) * 2, 8, "ft/min");
    const asFlown = facts.constant.find((c) => c.basis === "as-flown")!;
    near(asFlown.lateS!, 60, 5, "s");
    near(asFlown.lateNm!, 2, 0.15, "NM");
    expect(findings.map((f) => f.code)).toEqual(["descent-crossed-high", "descent-begun-late"]);
    expect(findings[0]!.facts.sure).toBe(true);
    near(facts.reached!.toGoNm, -(500 - 100) / 250, 0.1, "NM past the point");
  });

  it("begun in good time but at 350 ft/min it is too shallow", () => {
    const codes = flyDown(exercise, 4000, 8, 350).findings.map((f) => f.code);
    expect(codes).toEqual(["descent-crossed-high", "descent-too-shallow"]);
  });

  it("begun early it is level before the point", () => {
    const { facts, findings } = flyDown(exercise, 4000, 11, 500);
    expect(findings.map((f) => f.code)).toEqual(["descent-crossed-at", "descent-begun-early"]);
    // a height that was met has nothing to explain
    expect(descentCause({ findings } as unknown as DescentRecord)).toBeUndefined();
    near(facts.reached!.toGoNm, 3 + 100 / 250, 0.1, "NM");
  });

  it("never begun", () => {
    const { facts, findings } = flyDown(exercise, 4000, -1, 500);
    expect(facts.began).toBeNull();
    expect(findings.map((f) => f.code)).toEqual(["descent-not-begun", "descent-crossed-high"]);
  });

  it("where the log is silent over the point its height has the doubt of that, and the rate is of what was seen", () => {
    // level at 2,000 ft from the point on; 60 s of silence about it: 1 NM on either side
    const [seen, silent] = [{}, { silentNm: [1.01, -0.99] as const }].map((shown) =>
      flyDown(exercise, 4000, 8, 500, shown),
    ) as [DescentMeasured, DescentMeasured];
    near(silent.facts.crossing!.silentS!, 61, 1.5, "s");
    // 500 ft/min off and back, reached in 5 s: 8.33 ft/s times half of 61 s less 5 s
    const widened = silent.facts.crossing!.doubt95Ft - seen.facts.crossing!.doubt95Ft;
    near(widened, 8.333 * (61 / 2 - 5), 12, "ft");
    expect(seen.facts.crossing!.silentS ?? null).toBeNull();
    near(silent.facts.flown!.meanDownFpm!, 500, 8, "ft/min");
    near(silent.facts.flown!.distanceNm, 7, 0.1, "NM");
    near(silent.facts.reached!.silence!.earliestToGoNm, 1, 0.05, "NM");
    near(silent.facts.reached!.toGoNm, -1, 0.05, "NM");
    expect(silent.findings[0]!.facts.sure).toBe(false);
    expect(silent.findings.map((f) => f.code)).toEqual(["descent-crossed-high", "gap-in-exercise"]);
    const verdict = gradeDescent(silent.facts, standardNamed("instrument-rating-us")!)[0]!;
    expect([verdict.verdict, verdict.reason]).toEqual(["cannot tell", "passed-in-silence"]);
  });

  it("begun in a silence it is told between which distances, and what was flown is of the rest", () => {
    // from 10 to 6 NM to go nothing is logged; it was begun at 8 NM, and at 6 NM it is at 3,500 ft
    const { facts, findings } = flyDown(exercise, 4000, 8, 500, { silentNm: [10.01, 6.01] });
    expect(facts.began!.utc).toBeNull();
    near(facts.began!.silence!.earliestToGoNm, 10, 0.1, "NM");
    near(facts.began!.toGoNm, 6, 0.1, "NM");
    near(facts.began!.neededDownFpm!, 500, 8, "ft/min");
    near(facts.flown!.meanDownFpm!, 500, 8, "ft/min");
    near(facts.flown!.lostFt, 1400, 15, "ft"); // to within 100 ft of 2,000
    near(facts.mostNeeded!.downFpm, 500, 60, "ft/min");
    for (const { lateS, lateNm } of facts.constant) expect([lateS, lateNm]).toEqual([null, null]);
    expect(findings.map((f) => f.code)).toEqual(["descent-crossed-at", "gap-in-exercise"]);
  });

  it("a silence in the middle of it leaves its beginning, its rate and its height as they were", () => {
    const { facts, findings } = flyDown(exercise, 4000, 8, 500, { silentNm: [5.01, 3.99] });
    near(facts.began!.toGoNm, 8, 0.1, "NM");
    expect([facts.began!.silence ?? null, facts.crossing!.silentS ?? null]).toEqual([null, null]);
    near(facts.flown!.meanDownFpm!, 500, 8, "ft/min");
    expect(findings.map((f) => f.code)).toEqual(["descent-crossed-at", "gap-in-exercise"]);
  });

  it("the needed rate stands at every row: constant on a path that fits, growing where level", () => {
    const { series } = flyDown(exercise, 4000, 8, 500);
    for (let i = 0; i < series.timeMs.length; i++) {
      const toGo = series.distanceToGoNm[i]!;
      if (toGo > 8.2) near(series.neededDownFpm[i]!, (2000 / toGo) * 2, 5, "ft/min", `${toGo} NM`);
      else if (toGo < 7.8 && toGo > 1) near(series.neededDownFpm[i]!, 500, 15, "ft/min", `${toGo} NM`);
      else if (toGo <= 0) expect(series.neededDownFpm[i]).toBeNaN();
    }
  });

  it("without times: heights, gradients and miles are told, rates are not", () => {
    const { facts } = flyDown(exercise, 4000, 6, 500, { timed: false });
    near(facts.crossing!.overFt, 500, 12, "ft");
    near(facts.began!.toGoNm, 6, 0.15, "NM");
    near(facts.flown!.meanDownFtPerNm, 250, 8, "ft/NM");
    near(facts.constant.find((c) => c.basis === "as-flown")!.lateNm!, 2, 0.3, "NM");
    expect(facts.flown!.meanDownFpm).toBeNull();
    expect(facts.cannotTell).toContainEqual({ fact: "rates", reason: "no-times" });
  });

  it("without heights nothing is made up", () => {
    const { facts, findings } = flyDown(exercise, 4000, 6, 500, { height: false });
    expect(facts.crossing).toBeNull();
    expect(facts.began).toBeNull();
    expect(findings).toEqual([]);
    expect(facts.cannotTell).toContainEqual({ fact: "crossing", reason: "no-height" });
  });

  it.each([
    ["over the antimeridian", 20, -179.95],
    ["at 70 N", 70, 25],
    ["below sea level, to -800 ft", 31.5, 35.5],
  ])("%s it is the same", (_, latitude, longitude) => {
    const low = longitude === 35.5 ? 2800 : 0;
    const { facts } = flyDown(exerciseAt(latitude, longitude, 2000 - low, 1), 4000 - low, 6, 500);
    near(facts.crossing!.overFt, 500, 12, "ft");
    near(facts.began!.toGoNm, 6, 0.15, "NM");
  });
});

describe("the doubt of a height: a GPS is not an altimeter", () => {
  it("is that of the altimeter at that height, and a miss of less is not called sure", () => {
    const { facts, findings } = flyDown(exerciseAt(35.668, 172.069, 2000, 1), 4000, 7.5, 500);
    near(facts.crossing!.doubt95Ft, altimeterDoubt95(facts.crossing!.altitudeFt), 0.5, "ft");
    near(facts.crossing!.overFt, 125, 12, "ft");
    expect(findings[0]).toMatchObject({ code: "descent-crossed-high", facts: { sure: false } });
  });
});

const seconds = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 1000;

function flown(name: string, every: number) {
  return Array.from({ length: 12 }, (_, k) => 5200 + k).map((seed) => {
    const scenario = scenarioNamed(name, { logging: { every } });
    const { track, truth } = fly(scenario, seed);
    const motion = smoothTrack(track)!;
    const legs = findLegs(motion);
    const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
    const brief = resolveBrief(readBrief(scenario.brief!, "b.yaml"), { time: track.time[0]! });
    const { span } = matchExercises(brief, { ...motion, legs })[0]!;
    const exercise = brief.exercises[0] as DescentExercise;
    const measured = measureDescent({ exercise, path: motion, span: span!, motion, wind });
    const t: TrueDescent = truth.truth.descents![0]!;
    return { seed, measured, truth: t };
  });
}

describe.each([1, 5])(
  "by simulation with known truth, logged each %d s, unseen seeds, wind to 35 kt",
  (every) => {
    describe.each(["descent-in-time", "descent-late", "descent-early", "descent-with-level-off"])(
      "%s",
      (name) => {
        const cases = flown(name, every);

        it("the point is passed within 2 s (4 s where logged each 5 s), its height within 60 ft: four deviations of the receiver's height", () => {
          for (const { seed, measured, truth } of cases) {
            const { crossing } = measured.facts;
            near(seconds(truth.crossingUtc, crossing!.utc!), 0, every === 1 ? 2 : 4, "s", `seed ${seed}`);
            near(crossing!.altitudeFt, truth.crossingAltitudeFt, 60, "ft", `seed ${seed}`);
          }
        });

        it("it began within 16 s of the pilot's push, the aircraft taking some 5 s to follow", () => {
          for (const { seed, measured, truth } of cases) {
            near(seconds(truth.beganUtc!, measured.facts.began!.utc!), 4, 12, "s", `seed ${seed}`);
            near(measured.facts.began!.altitudeFt, truth.beganAltitudeFt!, 90, "ft", `seed ${seed}`);
          }
        });

        it("early or late by 500 ft/min within 40 s: 50 ft of wander at either end are 6 s, 100 ft at the end 12 s", () => {
          for (const { seed, measured, truth } of cases) {
            const usual = measured.facts.constant.find((c) => c.basis === "usual-rate")!;
            near(usual.lateS!, truth.lateS, 40, "s", `seed ${seed}`);
          }
        });

        it("says what the script flew", () => {
          const said = cases.map(({ measured }) => measured.findings.map((f) => f.code));
          const most = (code: string) => said.filter((codes) => codes.includes(code)).length;
          const wanted = {
            "descent-in-time": "descent-crossed-at",
            "descent-late": "descent-begun-late",
            "descent-early": "descent-begun-early",
            "descent-with-level-off": "descent-levelled-off",
          }[name]!;
          expect(most(wanted)).toBeGreaterThanOrEqual(11);
          if (name !== "descent-with-level-off") expect(most("descent-levelled-off")).toBe(0);
        });
      },
    );
  },
);

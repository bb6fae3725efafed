/** Approaches flown by ruler, truth known by construction: what is measured of them, and what is said cannot be told. */
import { describe, expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { measureApproach } from "../../src/approach/index.ts";
import {
  approachTo,
  beam,
  FIELD,
  type Field,
  measured,
  type Row,
  secondsOf,
  straightIn,
  trackOf,
} from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

const centred = () => 0;
const KNOTS = 90;
/** Seconds from the start, 9 NM out, to a distance before the threshold. */
const secondsTo = (before: number) => ((9 - before) / KNOTS) * 3600;
const tidy = straightIn(9, centred, (b) => Math.min(1650, beam(b)));

describe("by construction: a precision approach straight down the beam", () => {
  const { facts, findings, series } = measured(approachTo(FIELD), tidy);
  it("is a valid part of the document", () => {
    approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  });
  it("passes fix, minimum and threshold when it did, and has landed", () => {
    near(secondsOf(facts.finalFixPassage!.utc), secondsTo(5), 0.1, "s");
    // 200 ft on the path: (200 - 50) / 318.4 NM before the threshold
    near(secondsOf(facts.minimum!.passedUtc!), secondsTo(150 / 318.4), 0.4, "s");
    near(secondsOf(facts.landing!.thresholdUtc), secondsTo(0), 0.1, "s");
    near(facts.landing!.thresholdFt!, 50, 3, "ft");
    expect([facts.outcome, facts.missed, facts.joinedFrom]).toEqual(["landed", null, "straight-in"]);
  });
  it("has no deviation to speak of, a line of 3.00 degrees, and 478 ft/min at 90 kt", () => {
    near(facts.crossTrack.maxNm, 0, 0.0005, "NM");
    near(facts.glidePath!.needle.max, 0, 0.03);
    near(facts.flownPath!.angleDeg, 3, 0.01, "deg");
    // US climb/descent table: 3.0 degrees at 90 kt
    near(facts.descent!.meanFpm, 478, 6, "ft/min");
  });
  it("shows the gates at 1,000 and 500 ft where they were, and names what a log cannot show", () => {
    expect(facts.gates.map((g) => g.heightFt)).toEqual([1000, 500]);
    near(facts.gates[0]!.distanceNm!, 950 / 318.4, 0.03, "NM");
    near(facts.gates[1]!.distanceNm!, 450 / 318.4, 0.02, "NM");
    near(facts.gates[0]!.verticalFpm!, -478, 8, "ft/min");
    near(facts.gates[0]!.bankDeg!, 0, 0.2, "deg");
    expect(facts.notShown).toContain("configuration");
  });
  it("says nothing worse than within", () => {
    expect(findings.map((f) => f.code)).toEqual(["final-within", "glide-path-within", "landed"]);
  });
  it("gives columns of one length, the judged ones from the fix to the minimum", () => {
    expect(series.kind).toBe("approach");
    const first = series.judged.indexOf(1);
    near(series.distanceToThresholdNm[first]!, 5, 0.03, "NM");
    near(series.distanceToThresholdNm[series.judged.lastIndexOf(1)]!, 0.47, 0.06, "NM");
    for (const column of Object.values(series)) {
      if (typeof column === "object") expect(column.length).toBe(series.timeMs.length);
    }
  });
});

describe("by construction: half a degree below the path and right of the final", () => {
  const rows = straightIn(
    9,
    () => 0.08,
    (b) => Math.min(1650, beam(b, 2.5)),
  );
  const right = measured(approachTo(FIELD), rows).facts;
  const left = measured(
    approachTo(FIELD),
    rows.map((r) => ({ ...r, aside: -r.aside })),
  ).facts;
  it("0.08 NM right all the way; mirrored it is left, and nothing else changes", () => {
    near(right.crossTrack.meanNm, 0.08, 0.0005, "NM");
    near(left.crossTrack.meanNm, -0.08, 0.0005, "NM");
    near(left.needle.max, -right.needle.max, 1e-4);
    near(left.glidePath!.meanDeg, right.glidePath!.meanDeg, 1e-3, "deg");
  });
  it("the needle at the minimum: 0.08 NM over 700 ft by distance from the antenna at 8,000 ft", () => {
    const reach = 8000 / 6076.1 + right.needle.maxDistanceNm;
    near(right.needle.max, Math.atan(0.08 / reach) / (2.505 * (Math.PI / 180)), 0.005);
  });
  it("flew 2.50 degrees", () => near(right.flownPath!.angleDeg, 2.5, 0.01, "deg"));
});

describe("heights are worth what the log shows", () => {
  const rolled = straightIn(9, centred, (b) => Math.min(1650, beam(b)));
  it("130 ft of unknown datum is taken out where the aircraft rolled on the runway", () => {
    const { facts } = measured(approachTo(FIELD), rolled, 130);
    expect(facts.height!.anchored).toBe("runway");
    near(facts.height!.correctionFt, -130, 2, "ft");
    near(facts.glidePath!.needle.max, 0, 0.05);
  });
  it("without the roll nothing is taken out, the doubt is large and it is said", () => {
    const rows = straightIn(9, centred, (b) => Math.min(1650, beam(b)), { roll: false });
    const { facts } = measured(approachTo(FIELD), rows, 130);
    expect(facts.height).toMatchObject({ anchored: "log", correctionFt: 0 });
    expect(facts.height!.doubt95Ft).toBeGreaterThan(80);
    expect(facts.cannotTell).toContainEqual({ fact: "height", reason: "height-not-anchored" });
  });
  it("a take-off from the same runway before serves as well, with more doubt", () => {
    const roll: Row[] = Array.from({ length: 60 }, (_, t) => ({ t, before: -0.1, aside: 0, height: 0 }));
    const approach = straightIn(9, centred, (b) => Math.min(1650, beam(b)), { roll: false });
    const rows = [...roll, ...approach.map((r) => ({ ...r, t: r.t + 600 }))];
    const { facts } = measured(approachTo(FIELD), rows, 130);
    expect(facts.height!.anchored).toBe("runway");
    near(facts.height!.correctionFt, -130, 2, "ft");
    const landed = measured(approachTo(FIELD), rolled, 130).facts;
    expect(facts.height!.doubt95Ft).toBeGreaterThan(landed.height!.doubt95Ft);
  });
  it("a log without heights has its lateral facts, and says why there are no others", () => {
    const exercise = approachTo(FIELD);
    const rows = rolled.map((r) => ({ ...r, height: Number.NaN }));
    const { facts } = measured(exercise, rows);
    approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
    expect([facts.height, facts.glidePath, facts.descent]).toEqual([null, null, null]);
    expect(facts.cannotTell).toContainEqual({ fact: "height", reason: "no-height" });
    near(secondsOf(facts.finalFixPassage!.utc), secondsTo(5), 0.1, "s");
  });
  it("a log without times has its deviations, and says so", () => {
    const exercise = approachTo(FIELD);
    const { latitude, longitude, altitude } = trackOf(
      exercise,
      straightIn(9, () => 0.05, beam),
    );
    const path = { time: null, latitude, longitude, altitude };
    const { facts, findings } = measureApproach({
      exercise,
      path,
      span: { start: 0, end: 300 },
      motion: null,
      wind: null,
    });
    approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
    near(facts.crossTrack.meanNm, 0.05, 0.0005, "NM");
    expect(facts.cannotTell).toContainEqual({ fact: "segments", reason: "no-times" });
    expect(JSON.stringify(findings)).not.toContain("NaN");
  });
});

describe("by construction: a missed approach begun 0.45 NM before the threshold, gently for a minute, then at 700 ft/min", () => {
  const gently = (fpm: number, levelS = 0) => {
    const down = straightIn(9, centred, (b) => Math.min(1650, beam(b)), { roll: false, to: 0.45 });
    const last = down.at(-1)!;
    const height = (t: number) => (Math.min(t, 60) * fpm + Math.max(0, t - 60) * 700) / 60;
    const away = Array.from({ length: levelS + 130 }, (_, k) => ({
      t: last.t + 1 + k,
      before: last.before - ((k + 1) * KNOTS) / 3600,
      aside: 0,
      height: last.height + height(Math.max(0, k + 1 - levelS)),
    }));
    const { facts } = measured(approachTo(FIELD), [...down, ...away]);
    return { missed: facts.missed!, begun: last.t + levelS };
  };
  it.each([60, 100, 150, 200, 300])("%s ft/min in that minute", (fpm) => {
    const { missed, begun } = gently(fpm);
    near(secondsOf(missed.startUtc), begun, 5, "s");
    near(missed.climbFpm, fpm, 40, "ft/min");
  });
  it.each([100, 200])("after 40 s level at the decision altitude, %s ft/min", (fpm) => {
    const { missed, begun } = gently(fpm, 40);
    near(secondsOf(missed.startUtc), begun, 5, "s");
    near(missed.climbFpm, fpm, 40, "ft/min");
    near(missed.level!.seconds, 40, 6, "s");
  });
});

describe("by construction: level-offs, step-downs and minimums", () => {
  const exercise = approachTo(FIELD, {
    guidance: { kind: "lnav", width: null, antenna: null, station: null, rnp: null },
    glidePath: null,
    minimum: { kind: "descent", altitude: FIELD.elevation + 480 },
    stepDowns: [{ name: "2.5 NM", distance: 2.5, altitude: FIELD.elevation + 880 }],
  });
  /** Down at 800 ft/min from the fix to each level, 533 ft/NM at 90 kt. */
  const steps = (first: number, second: number) => (b: number) => {
    const down = (from: number, to: number, at: number) => Math.max(to, from - (at - b) * (800 / 1.5));
    if (b > 5) return 1650;
    return b > 2.5 ? down(1650, first, 5) : down(first, second, 2.5);
  };
  const climbing = (rows: Row[], height: number) => {
    const last = rows.at(-1)!;
    return [
      ...rows,
      ...Array.from({ length: 150 }, (_, k) => ({
        t: last.t + 1 + k,
        before: last.before - ((k + 1) * KNOTS) / 3600,
        aside: 0,
        height: height + (600 / 60) * Math.max(0, k),
      })),
    ];
  };
  it("level at 480 ft from where it was reached to the missed approach point, then a climb at 600 ft/min", () => {
    const rows = climbing(straightIn(9, centred, steps(900, 500), { roll: false, to: 0 }), 500);
    const { facts } = measured(exercise, rows);
    const levels = facts.descent!.levels;
    expect(levels.length).toBe(2);
    near(levels[0]!.altitudeFt, FIELD.elevation + 900, 6, "ft");
    near(levels[1]!.altitudeFt, FIELD.elevation + 500, 6, "ft");
    near(levels[0]!.fromNm, 5 - 750 / (800 / 1.5), 0.15, "NM");
    expect(facts.outcome).toBe("missed");
    near(secondsOf(facts.missed!.startUtc), secondsTo(0), 3, "s");
    near(facts.missed!.climbFpm, 600, 30, "ft/min");
    near(facts.missed!.trackErrorDeg, 0, 0.2, "deg");
    // a level-off without a curve is no flight: smoothing rounds its corner by 9 ft
    near(facts.minimum!.marginFt!, 20, 10, "ft");
    near(facts.stepDowns[0]!.marginFt!, 20, 10, "ft");
    // height 430 ft above the threshold crossing height at 318 ft/NM
    near(facts.descent!.visualDescentPointNm!, 430 / 318.4, 0.01, "NM");
  });
  it("100 ft below the minimum and the step-down are told, with their doubt", () => {
    const rows = climbing(straightIn(9, centred, steps(780, 380), { roll: false, to: 0 }), 380);
    const { findings, facts } = measured(exercise, rows);
    near(facts.minimum!.marginFt!, -100, 10, "ft");
    near(facts.stepDowns[0]!.marginFt!, -100, 10, "ft");
    expect(findings.map((f) => f.code).slice(0, 2)).toEqual(["below-step-down", "below-minimum"]);
    // no ground roll: 100 ft is inside the doubt of an unknown datum
    expect(findings[1]!.facts.sure).toBe(false);
  });
  it("of two step-downs the one gone below by most leads", () => {
    const stepDowns = [
      { name: "4 NM", distance: 4, altitude: FIELD.elevation + 1300 },
      { name: "2.5 NM", distance: 2.5, altitude: FIELD.elevation + 1200 },
    ];
    // at 4 NM 183 ft below 1,300 ft, then down to 780 ft: 420 ft below 1,200 ft
    const rows = climbing(straightIn(9, centred, steps(780, 500), { roll: false, to: 0 }), 500);
    const { findings } = measured({ ...exercise, stepDowns }, rows);
    expect(findings.slice(0, 2).map((f) => [f.code, f.facts.name])).toEqual([
      ["below-step-down", "2.5 NM"],
      ["below-step-down", "4 NM"],
    ]);
    near(Number(findings[0]!.facts.belowFt), 420, 10, "ft");
  });
  it("a log that begins inside a step-down before the fix tells nothing of it", () => {
    const stepDowns = [{ name: "8 NM", distance: 8, altitude: FIELD.elevation + 1600 }];
    const rows = straightIn(7, centred, steps(900, 500), { roll: false, to: 0 });
    const { facts, findings } = measured({ ...exercise, stepDowns }, rows);
    expect(facts.stepDowns[0]).toMatchObject({ passedFt: null, lowestFt: null, marginFt: null });
    expect(findings.map(({ code }) => code)).not.toContain("below-step-down");
  });
  it("the constant descent that would have fitted: 1,600 ft in 5 NM", () => {
    const { facts } = measured(exercise, straightIn(9, centred, steps(900, 500), { roll: false, to: 0 }));
    near(facts.descent!.constant!.feetPerNm, 1600 / 5, 2, "ft/NM");
    near(facts.descent!.constant!.fpm, 320 * 1.5, 5, "ft/min");
  });
});

describe("the same anywhere", () => {
  const rows = straightIn(
    9,
    (b) => 0.05 * Math.sin(b),
    (b) => Math.min(1650, beam(b, 3.1)),
  );
  const here = measured(approachTo(FIELD), rows).facts;
  it.each<[string, Field]>([
    [
      "over the antimeridian",
      { threshold: { latitude: -17, longitude: 179.98 }, course: 265, elevation: 420 },
    ],
    ["at 70 N", { threshold: { latitude: 70, longitude: -40 }, course: 120, elevation: 420 }],
    [
      "at a field 8,000 ft high",
      { threshold: { latitude: 39, longitude: -106 }, course: 330, elevation: 8000 },
    ],
    ["below sea level", { threshold: { latitude: 31.5, longitude: 35.4 }, course: 10, elevation: -1240 }],
    ["in the south", { threshold: { latitude: -45, longitude: 168 }, course: 230, elevation: 420 }],
  ])("%s", (_, field) => {
    const { facts } = measured(approachTo(field), rows);
    near(facts.crossTrack.maxNm, here.crossTrack.maxNm, 0.0005, "NM");
    near(facts.needle.max, here.needle.max, 0.003);
    near(facts.glidePath!.meanDeg, here.glidePath!.meanDeg, 0.003, "deg");
    near(facts.flownPath!.angleDeg, here.flownPath!.angleDeg, 0.006, "deg");
    near(secondsOf(facts.finalFixPassage!.utc), secondsOf(here.finalFixPassage!.utc), 0.05, "s");
    near(secondsOf(facts.minimum!.passedUtc!), secondsOf(here.minimum!.passedUtc!), 0.2, "s");
    near(facts.height!.correctionFt, here.height!.correctionFt, 1, "ft");
    expect([facts.outcome, facts.joinedFrom]).toEqual([here.outcome, here.joinedFrom]);
  });
});

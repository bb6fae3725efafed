/** One meter for approaches against the simulator's truth, for the gate and for the printed report. */
import { findApproaches, measureApproach } from "../../src/approach/index.ts";
import type { ApproachExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import type { SimulatedRunway } from "../../src/simulator/approach-step.ts";
import { approachBrief, drawnApproach } from "../../src/simulator/approaches.ts";
import { fly, type Scenario } from "../../src/simulator/index.ts";
import { offset } from "../../src/simulator/step.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";

const NM = 1852;
const RADIAN = Math.PI / 180;

/** Errors, each with its unit; a value that the log could not give is counted as missing. */
export interface ApproachErrors {
  /** Root mean square over each flight, m: measured less true, from 8 NM before the threshold to it. */
  readonly lateralM: number[];
  /** Angle of the line flown, degrees, where tied to the runway. */
  readonly angleDeg: number[];
  readonly overshootNm: number[];
  readonly fixS: number[];
  readonly minimumS: number[];
  /** The minimum's time had the receiver's height error then been known: what the analysis itself adds. */
  readonly minimumOwnS: number[];
  readonly missedS: number[];
  readonly thresholdS: number[];
  flights: number;
  matched: number;
  found: number;
  anchored: number;
  /** Flights with a fact missing that the truth has, by name. */
  readonly missing: string[];
}

export const noErrors = (): ApproachErrors => ({
  lateralM: [],
  angleDeg: [],
  overshootNm: [],
  fixS: [],
  minimumS: [],
  minimumOwnS: [],
  missedS: [],
  thresholdS: [],
  flights: 0,
  matched: 0,
  found: 0,
  anchored: 0,
  missing: [],
});

export interface Case {
  readonly seed: number;
  readonly every: number;
  readonly ends: "landing" | "missed";
  readonly runway?: SimulatedRunway;
}

export function scenarioOf({ every, ends, runway, seed }: Case): Scenario {
  return { ...drawnApproach(ends, runway, seed % 2 ? 1 : -1), logging: { every } };
}

/** Flies one approach, finds it with and without its brief, measures it and adds its errors. */
export function meterApproach(errors: ApproachErrors, c: Case): void {
  const scenario = scenarioOf(c);
  const { track, truth, columns } = fly(scenario, c.seed);
  const flown = truth.truth.approaches![0]!;
  const [brief] = [resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! })];
  const exercise = brief.exercises[0] as ApproachExercise;
  const motion = smoothTrack(track)!;
  const legs = findLegs(motion);
  const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
  errors.flights++;
  const fixUtc = Date.parse(flown.finalFixUtc!);
  const holds = (span: { start: number; end: number } | null | undefined) =>
    span && motion.time[span.start]! < fixUtc && motion.time[span.end - 1]! > Date.parse(flown.thresholdUtc!);
  const found = findApproaches(motion, [
    exercise.runway,
    { ...exercise.runway, threshold: exercise.runway.end, end: exercise.runway.threshold },
  ]);
  if (
    found.length === 1 &&
    holds(found[0]!.span) &&
    found[0]!.exercise.runway.threshold === exercise.runway.threshold
  )
    errors.found++;
  const [match] = matchExercises(brief, { ...motion, legs });
  const name = `seed ${c.seed}, ${c.every} s, ${c.ends}`;
  if (!holds(match!.span)) {
    errors.missing.push(`${name}: not matched`);
    return;
  }
  errors.matched++;
  const { facts, series } = measureApproach({ exercise, path: motion, span: match!.span!, motion, wind });
  if (facts.height?.anchored === "runway") errors.anchored++;

  // lateral: against the simulator's own geodesy, row by row
  const { threshold, course } = c.runway ?? {
    threshold: exercise.runway.threshold,
    course: flown.courseTrueDeg,
  };
  let [sum, n] = [0, 0];
  for (let i = 0; i < series.timeMs.length; i++) {
    const before = series.distanceToThresholdNm[i]!;
    if (!(before > 0 && before < 8)) continue;
    const k = Math.round((series.timeMs[i]! - scenario.start.time) / 1000);
    const to = offset(threshold, { latitude: columns.latitude[k]!, longitude: columns.longitude[k]! });
    const across = to.distance * Math.sin((to.azimuthAtStart - course) * RADIAN);
    sum += (series.crossTrackNm[i]! * NM - across) ** 2;
    n++;
  }
  errors.lateralM.push(Math.sqrt(sum / n));

  const seconds = (utc: string | null | undefined, truly: string | null, into: number[], fact: string) => {
    if (truly === null) return;
    if (!utc) errors.missing.push(`${name}: ${fact}`);
    else into.push((Date.parse(utc) - Date.parse(truly)) / 1000);
  };
  seconds(facts.finalFixPassage?.utc, flown.finalFixUtc, errors.fixS, "final fix");
  seconds(
    facts.landing?.thresholdUtc,
    c.ends === "landing" ? flown.thresholdUtc : null,
    errors.thresholdS,
    "threshold",
  );
  seconds(facts.missed?.startUtc, flown.missedUtc, errors.missedS, "missed approach");
  // the log's own heights may never pass a minimum that was passed by less than the receiver's error
  if (facts.minimum?.passedUtc && flown.minimumUtc) {
    seconds(facts.minimum.passedUtc, flown.minimumUtc, errors.minimumS, "minimum");
    const own = ownMinimum(c, facts, series, scenario, columns);
    if (own !== null) errors.minimumOwnS.push(own);
  }
  if (facts.intercept) errors.overshootNm.push(facts.intercept.overshootNm - flown.overshootNm);
  else errors.missing.push(`${name}: intercept`);
  if (c.ends === "landing") {
    if (facts.height?.anchored !== "runway") errors.missing.push(`${name}: not tied to the runway`);
    else if (!facts.flownPath) errors.missing.push(`${name}: no line`);
    else {
      const from = Date.parse(facts.judged.fromUtc!);
      const to = Date.parse(facts.judged.toUtc!);
      errors.angleDeg.push(
        facts.flownPath.angleDeg - trueAngle(from, to, scenario, columns, threshold, course, facts),
      );
    }
  }
}

/** The line through the true heights between two moments, as the facts define it: least squares, 60 ft and more. */
function trueAngle(
  from: number,
  to: number,
  { start }: Scenario,
  columns: ReturnType<typeof fly>["columns"],
  threshold: { latitude: number; longitude: number },
  course: number,
  facts: ReturnType<typeof measureApproach>["facts"],
): number {
  const last = facts.descent?.levels.at(-1)?.toUtc;
  const begin = last && Date.parse(last) < to - 3000 ? Date.parse(last) : from;
  let [n, d, h, dd, dh] = [0, 0, 0, 0, 0];
  for (let k = 0; k < columns.length; k++) {
    const time = start.time + columns.seconds[k]! * 1000;
    if (time < begin || time > to) continue;
    const way = offset(threshold, { latitude: columns.latitude[k]!, longitude: columns.longitude[k]! });
    const before = -way.distance * Math.cos((way.azimuthAtStart - course) * RADIAN);
    const height = (columns.altitude[k]! - facts.runway.elevationFt!) * 0.3048;
    if (height < 60 * 0.3048 || before <= 0) continue;
    const flat = height - before ** 2 / (2 * 6371000);
    n++;
    d += before;
    h += flat;
    dd += before * before;
    dh += before * flat;
  }
  return Math.atan((n * dh - d * h) / (n * dd - d * d)) / RADIAN;
}

/** When the true height shifted by the receiver's slow error near the minimum passes it, against what was measured. */
function ownMinimum(
  _: Case,
  facts: ReturnType<typeof measureApproach>["facts"],
  series: ReturnType<typeof measureApproach>["series"],
  { start }: Scenario,
  columns: ReturnType<typeof fly>["columns"],
): number | null {
  const measured = Date.parse(facts.minimum!.passedUtc!);
  // mean of measured less true height over half a minute: the slow part of the error
  let [sum, n] = [0, 0];
  for (let i = 0; i < series.timeMs.length; i++) {
    if (Math.abs(series.timeMs[i]! - measured) > 15_000) continue;
    const k = Math.round((series.timeMs[i]! - start.time) / 1000);
    sum += series.altitudeFt[i]! - columns.altitude[k]!;
    n++;
  }
  const shift = sum / n;
  for (let k = 1; k < columns.length; k++) {
    const [a, b] = [columns.altitude[k - 1]! + shift, columns.altitude[k]! + shift];
    const limit = facts.minimum!.altitudeFt;
    const time = start.time + (columns.seconds[k - 1]! + (a - limit) / (a - b)) * 1000;
    if (a > limit && b <= limit && Math.abs(time - measured) < 30_000) return (measured - time) / 1000;
  }
  return null;
}

export { approachBrief };

export interface Spread {
  readonly n: number;
  readonly rms: number;
  readonly p95: number;
  readonly worst: number;
}

export function spreadOf(values: readonly number[]): Spread {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  return {
    n: sizes.length,
    rms: Math.sqrt(values.reduce((s, v) => s + v * v, 0) / Math.max(1, values.length)),
    p95: sizes[Math.floor(0.95 * (sizes.length - 1))] ?? Number.NaN,
    worst: sizes.at(-1) ?? Number.NaN,
  };
}

/** The wind on an arc: what it pushes out, the correction that was flown and needed all the way round, and the drift. */
import type { ArcExercise } from "../brief/brief.ts";
import { direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import { magneticCourse, magneticHeading } from "../quantity/magnetic.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, Knots, NauticalMiles, TrueDegrees } from "../quantity/units.ts";
import { intervals, rowOfLargest, weigh, Z95 } from "../quantity/weigh.ts";
import type { Correction } from "../track/index.ts";
import { headingForCourse, windOfAir } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { ArcFacts, ArcRemedy } from "./arc-facts.ts";
import { type ArcRows, sideOf, sweepOf } from "./arc-rows.ts";

/** Less than this share of the rows with a known wind is not called known. */
const KNOWN_SHARE = 0.5;
/** A deviation that never came to this is no drift. Chosen: half of the half mile that a tidy arc stays within. */
const DRIFTED: NauticalMiles = 0.25;
/** On the arc for practical purposes. */
const ON_THE_ARC: NauticalMiles = 0.1;
/** Radials of the remedy stand so far apart. Common practice: a new heading each 10 degrees. */
const REMEDY_STEP: AngleSize = 10;

/** Heading less tangent over some rows, right positive, where the wind is known. */
export interface ArcCorrection extends Correction {
  /** Air that moves away from the station. */
  readonly windOut: Knots;
}

type Columns = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

/** Null where the wind is not known over most of the span. */
export function correctionOnArc(
  exercise: ArcExercise,
  rows: ArcRows,
  span: Span,
  { alongFlight: air }: WindEstimate,
): ArcCorrection | null {
  const column = () => new Float64Array(rows.length).fill(Number.NaN);
  const [flown, needed, out, outDoubt, doubt] = Array.from({ length: 5 }, column) as Columns;
  const side = sideOf(exercise);
  for (let i = span.start; i < span.end; i++) {
    const row = rows.pathStart + i;
    const [tangent, airspeed] = [rows.courseAtFootDeg[i]!, air.trueAirspeed[row]!];
    const [east, north] = [air.airEast[row]!, air.airNorth[row]!];
    if (air.knowledge[row] !== "full" || !(airspeed > 0)) continue;
    const solved = headingForCourse(tangent, airspeed, windOfAir(east, north));
    if (!solved) continue;
    flown[i] = turnFrom(tangent, rows.headingDeg[i]!);
    needed[i] = solved.correction;
    const [outEast, outNorth] = [sinDeg(tangent - side * 90), sinDeg(tangent - side * 90 + 90)];
    out[i] = east * outEast + north * outNorth;
    const variance =
      air.varianceEast[row]! * outEast ** 2 +
      2 * air.covariance[row]! * outEast * outNorth +
      air.varianceNorth[row]! * outNorth ** 2;
    outDoubt[i] = Z95 * Math.sqrt(variance);
    doubt[i] = (outDoubt[i]! / airspeed) * DEGREES_PER_RADIAN;
  }
  const weights = intervals(rows, span);
  const mean = (values: Float64Array) => weigh(values, span, weights);
  const known = mean(flown);
  const whole = weights.reduce((a, b) => a + b, 0);
  if (!(known.weight > 0 && known.weight >= KNOWN_SHARE * whole)) return null;
  return {
    flown: known.mean,
    needed: mean(needed).mean,
    // errors of the wind are shared by neighbouring rows: the mean has the mean of the doubts
    doubt95: mean(doubt).mean,
    // away from the station is to the left of an arc that turns right
    across: -side * mean(out).mean,
    across95: mean(outDoubt).mean,
    windOut: mean(out).mean,
  };
}

/** From the last row on the arc before the worst to the worst; null where that is no drift, or there are no times. */
export function driftSpan(rows: ArcRows, judged: Span): Span | null {
  const worst = rowOfLargest(rows.deviationNm, judged);
  if (!rows.timed || worst < 0) return null;
  const side = Math.sign(rows.deviationNm[worst]!);
  const out = (i: number) => rows.deviationNm[i]! * side;
  let start = worst;
  for (let i = worst; i >= judged.start && !rows.gapBefore[i + 1]; i--) {
    if (out(i) < out(start)) start = i;
    if (out(i) <= ON_THE_ARC) break;
  }
  return out(worst) - out(start) >= DRIFTED && worst > start ? { start, end: worst + 1 } : null;
}

export function driftFacts(rows: ArcRows, span: Span, correction: ArcCorrection | null): ArcFacts["drift"] {
  const [from, to] = [span.start, span.end - 1];
  const seconds = (rows.timeMs[to]! - rows.timeMs[from]!) / 1000;
  const by = rows.deviationNm[to]! - rows.deviationNm[from]!;
  return {
    fromUtc: utcText(rows.timeMs[from]!),
    toUtc: utcText(rows.timeMs[to]!),
    seconds,
    byNm: by,
    nmPerMin: (by / seconds) * 60,
    windNmPerMin: correction && correction.windOut / 60,
    flownDeg: correction?.flown ?? null,
    neededDeg: correction?.needed ?? null,
    doubt95Deg: correction?.doubt95 ?? null,
  };
}

/** The heading each 10 degrees of the arc that holds it in a wind; null where no heading does. */
export function arcRemedy(
  exercise: ArcExercise,
  wind: {
    readonly from: TrueDegrees;
    readonly speed: Knots;
    readonly trueAirspeed: Knots;
    readonly doubt95: AngleSize;
  },
  leadDeg: AngleSize | null,
): ArcRemedy {
  const side = sideOf(exercise);
  const sweep = sweepOf(exercise);
  const steps = Math.max(1, Math.round(sweep / REMEDY_STEP));
  const { variation } = exercise;
  const headings = Array.from({ length: steps + 1 }, (_, k) => {
    const radial = direction(exercise.fromRadial + (side * sweep * k) / steps);
    const solved = headingForCourse(direction(radial + side * 90), wind.trueAirspeed, wind);
    return (
      solved && {
        radialTrueDeg: radial,
        radialMagneticDeg: magneticCourse(radial, variation),
        headingTrueDeg: solved.heading,
        headingMagneticDeg: magneticHeading(solved.heading, variation),
        correctionDeg: solved.correction,
      }
    );
  }).filter((heading) => heading !== null);
  if (headings.length <= steps) return null;
  const lead = leadDeg === null ? null : direction(exercise.toRadial - side * leadDeg);
  return {
    headings,
    doubt95Deg: wind.doubt95,
    leadRadialTrueDeg: lead,
    leadRadialMagneticDeg: lead === null ? null : magneticCourse(lead, variation),
  };
}

/** The facts of one descent as flown, gathered: the crossing, the beginning, rates needed and flown, findings, columns. */
import type { DescentExercise } from "../brief/brief.ts";
import { gapFindings } from "../quantity/gap-finding.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { Seconds } from "../quantity/units.ts";
import { altimeterDoubt95 } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { windOver, windRecord } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { type AsFlown, constantDescents } from "./descent-constant.ts";
import type { DescentFacts } from "./descent-facts.ts";
import { descentFindings } from "./descent-finding.ts";
import {
  beganFacts,
  firstSeen,
  flownFacts,
  levelOffsOf,
  lowestRow,
  meanOf,
  mostNeeded,
  neededAt,
  REACHED,
  reachedRow,
} from "./descent-flown.ts";
import { type DescentRows, gradientAt, measureDescentRows } from "./descent-rows.ts";
import type { CoursePath } from "./path.ts";
import type { DescentSeries } from "./series.ts";

export interface DescentToMeasure {
  readonly exercise: DescentExercise;
  /** The used flight; rows are those of the motion where there is one. */
  readonly path: CoursePath;
  /** Rows of the path in which it was flown, with the passage of the fix; at least two. */
  readonly span: Span;
  /** Row of the path at which the height of an earlier descent of the brief was wanted: this one was not begun before it. Null without one. */
  readonly earlier?: number | null;
  /** Null where the log has no times. */
  readonly motion: Motion | null;
  readonly wind: WindEstimate | null;
}

export interface DescentMeasured {
  readonly facts: DescentFacts;
  readonly findings: Finding[];
  readonly series: DescentSeries;
}

/**
 * Measures a descent to a height before a fix. The point where the height is wanted lies on the way flown, so far
 * before the passage of the fix. What cannot be told is null and stands in `cannotTell`: `no-times`, `no-height`.
 * @throws RangeError when the span has fewer than two rows or lies outside the path.
 */
export function measureDescent({
  exercise,
  path,
  span,
  earlier = null,
  motion,
  wind,
}: DescentToMeasure): DescentMeasured {
  const n = path.latitude.length;
  if (!(span.end - span.start >= 2 && span.start >= 0 && span.end <= n))
    throw new RangeError(`invalid span of an exercise: ${span.start} to ${span.end}`);
  const found = measureDescentRows(exercise, path, span, motion, earlier);
  // from the height, or from below it, nobody descends to it
  const rows =
    found.began && found.began.from <= exercise.toAltitude + REACHED ? { ...found, began: null } : found;
  const { clock, toGoNm, point, passage, began, timed } = rows;
  const start = path.time?.[0] ?? 0;
  const utcOf = (seconds: Seconds) => utcText(start + seconds * 1000);
  const utcAt = (row: number) => (timed ? utcOf(clock[row]!) : null);
  const altitude = rows.pointFt;
  const withHeight = !Number.isNaN(altitude);
  const reached = withHeight ? reachedRow(rows, exercise.toAltitude, span.end) : null;
  const levelOffs = began && timed ? levelOffsOf(rows, exercise.toAltitude, utcOf) : [];
  const until = Math.min(point, reached ?? point);
  const flown = began && flownFacts(rows, until, levelOffs);
  const lowest = withHeight ? lowestRow(rows, exercise.toAltitude) : null;
  const asFlown: AsFlown | null = flown && {
    downFpm: flown.meanDownFpm,
    downFtPerNm: flown.meanDownFtPerNm,
    groundSpeed: meanOf(rows.groundSpeedKt, began.row, point),
  };
  const stretch = {
    start: began?.row ?? Math.max(span.start, point - 1),
    end: Math.max(point, (began?.row ?? 0) + 2),
  };
  const from = began?.from ?? altitude;

  const silentTo = (row: number) => {
    const silent = rows.silentBefore(row);
    return silent === null ? {} : { silence: { seconds: silent, earliestToGoNm: toGoNm[row - 1]! } };
  };
  const facts: DescentFacts = {
    fix: exercise.fix.ident,
    toFt: exercise.toAltitude,
    beforeNm: exercise.before,
    point: [path.latitude[point]!, path.longitude[point]!],
    fixAt: [exercise.fix.latitude, exercise.fix.longitude],
    passedNm: rows.passedNm,
    passedUtc: utcAt(passage),
    crossing: withHeight
      ? {
          utc: timed ? utcOf(rows.pointClock) : null,
          altitudeFt: altitude,
          overFt: altitude - exercise.toAltitude,
          doubt95Ft: altimeterDoubt95(altitude) + rows.pointUnseenFt,
          ...(rows.pointUnseenFt > 0
            ? { silentS: rows.silentBefore(point), unseenFt: rows.pointUnseenFt }
            : {}),
        }
      : null,
    began: began && beganFacts(exercise, rows, began, utcAt),
    flown,
    reached:
      reached === null
        ? null
        : {
            utc: utcAt(reached),
            toGoNm: toGoNm[reached]!,
            beforeS: timed ? rows.pointClock - clock[reached]! : null,
            ...silentTo(reached),
          },
    mostNeeded: began && timed ? mostNeeded(exercise, rows, firstSeen(rows) ?? began.row, utcOf) : null,
    lowest:
      lowest === null
        ? null
        : {
            utc: utcAt(lowest),
            altitudeFt: rows.altitudeFt[lowest]!,
            underFt: exercise.toAltitude - rows.altitudeFt[lowest]!,
            doubt95Ft: altimeterDoubt95(rows.altitudeFt[lowest]!),
            toGoNm: toGoNm[lowest]!,
          },
    constant: withHeight ? constantDescents(exercise, rows, from, asFlown, utcOf) : [],
    levelOffs,
    groundSpeedKt: meanOf(rows.groundSpeedKt, stretch.start, stretch.end),
    wind: motion && wind && stretch.end <= n ? windRecord(windOver(wind, motion, stretch)) : null,
    cannotTell: [
      ...(timed ? [] : ["rates", "levelOffs", "wind"].map((fact) => ({ fact, reason: "no-times" }))),
      ...(withHeight
        ? [{ fact: "altitude", reason: "gps-height" }]
        : ["crossing", "began", "constant"].map((fact) => ({ fact, reason: "no-height" }))),
    ],
  };
  return {
    facts,
    findings: [
      ...descentFindings(facts),
      ...(path.time
        ? gapFindings(
            path.time,
            { start: Math.max(0, stretch.start - 1), end: Math.min(n, point + 1) },
            (row) => rows.silentBefore(row) !== null,
          )
        : []),
    ],
    series: seriesOf(exercise, rows, span, path, motion, wind),
  };
}

function seriesOf(
  exercise: DescentExercise,
  rows: DescentRows,
  { start, end }: Span,
  path: CoursePath,
  motion: Motion | null,
  wind: WindEstimate | null,
): DescentSeries {
  const length = end - start;
  const unknown = () => new Float64Array(length).fill(Number.NaN);
  const [neededFpm, neededGradient, gradient] = [unknown(), unknown(), unknown()] as const;
  const judged = new Uint8Array(length);
  for (let k = 0; k < length; k++) {
    const row = start + k;
    gradient[k] = gradientAt(rows, row);
    if (rows.began && row >= rows.began.row && row <= rows.point) judged[k] = 1;
    if (!(rows.toGoNm[row]! > 0)) continue;
    const needed = neededAt(exercise, rows, row);
    neededFpm[k] = needed.rate;
    neededGradient[k] = needed.gradient;
  }
  return {
    kind: "descent",
    pathStart: start,
    timeMs: path.time?.subarray(start, end) ?? unknown(),
    distanceToGoNm: rows.toGoNm.subarray(start, end),
    altitudeFt: rows.altitudeFt.subarray(start, end),
    neededDownFpm: neededFpm,
    neededDownFtPerNm: neededGradient,
    flownDownFpm: rows.downFpm.subarray(start, end),
    flownDownFtPerNm: gradient,
    groundSpeedKt: rows.groundSpeedKt.subarray(start, end),
    trackTrueDeg: motion?.trackAngle.subarray(start, end) ?? unknown(),
    headingTrueDeg: wind?.alongFlight.heading.subarray(start, end) ?? unknown(),
    judged,
  };
}

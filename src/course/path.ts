/** The exercise as it stands against its course, row by row: the one place where positions become deviations. */

import type { CourseExercise } from "../brief/brief.ts";
import { measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE, nauticalMilesFromMetres } from "../quantity/factor.ts";
import { acrossAt, needleOf } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Degrees, FeetMsl, NauticalMiles, UtcMillis } from "../quantity/units.ts";
import { SLOW_POSITION_SD } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { Column } from "../track/track.ts";
import type { WindEstimate } from "../wind/wind.ts";

/** The used flight, one row a point; rows are those of the motion where there is one. */
export interface CoursePath {
  /** Null where the log has no times. */
  readonly time: Column<UtcMillis> | null;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  readonly altitude: Column<FeetMsl>;
}

/** Rows of one exercise. Signs: right of course positive. NaN where not known. */
export interface Rows {
  readonly length: number;
  /** Path row of row 0. */
  readonly pathStart: number;
  /** NaN throughout where the log has no times. */
  readonly timeMs: Float64Array;
  readonly timed: boolean;
  readonly alongNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** To the fix for `to` and `leg`, from it for `from`; never negative. */
  readonly distanceToFixNm: Float64Array;
  /** 1 where the aircraft is on the far side of the fix that the course ends or begins at. */
  readonly pastFix: Uint8Array;
  readonly needle: Float64Array;
  /** From the course to full deflection. */
  readonly fullScaleNm: Float64Array;
  readonly courseAtFootDeg: Float64Array;
  readonly trackDeg: Float64Array;
  readonly trackErrorDeg: Float64Array;
  /** Standard deviation of the track angle, from that of the velocity. */
  readonly trackSdDeg: Float64Array;
  readonly turnRate: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly headingDeg: Float64Array;
  readonly altitudeFt: Float64Array;
  readonly positionSdNm: Float64Array;
  /** 1 where the log is silent between this row and the one before. */
  readonly gapBefore: Uint8Array;
}

export function measureRows(
  exercise: CourseExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  wind: WindEstimate | null,
): Rows {
  const { start, end } = span;
  const length = end - start;
  if (!(length >= 2 && start >= 0 && end <= path.latitude.length)) {
    throw new RangeError(`invalid span of an exercise: ${start} to ${end}`);
  }
  const { course, scale, form } = exercise;
  const line = measureColumns(
    course,
    path.latitude.subarray(start, end),
    path.longitude.subarray(start, end),
  );
  const column = () => new Float64Array(length).fill(Number.NaN);
  const cut = (source: Float64Array | undefined | null) => source?.subarray(start, end) ?? column();
  const rows = {
    length,
    pathStart: start,
    timed: path.time !== null,
    timeMs: cut(path.time),
    alongNm: line.along.map(nauticalMilesFromMetres),
    crossTrackNm: line.across.map(nauticalMilesFromMetres),
    distanceToFixNm: column(),
    pastFix: new Uint8Array(length),
    needle: column(),
    fullScaleNm: column(),
    courseAtFootDeg: line.courseAtFoot,
    trackDeg: cut(motion?.trackAngle),
    trackErrorDeg: column(),
    trackSdDeg: column(),
    turnRate: cut(motion?.turnRate),
    groundSpeedKt: cut(motion?.groundSpeed),
    headingDeg: cut(wind?.alongFlight.heading),
    altitudeFt: cut(path.altitude),
    positionSdNm: column(),
    gapBefore: new Uint8Array(length),
  };
  markGaps(rows.gapBefore, motion, span);
  const fixAlong = form === "leg" && course.length !== null ? nauticalMilesFromMetres(course.length) : 0;
  for (let i = 0; i < length; i++) {
    const toGo = form === "from" ? rows.alongNm[i]! : fixAlong - rows.alongNm[i]!;
    rows.pastFix[i] = toGo < 0 ? 1 : 0;
    rows.distanceToFixNm[i] = Math.abs(toGo);
    rows.needle[i] = needleOf(scale, rows.crossTrackNm[i]!, toGo);
    rows.fullScaleNm[i] = acrossAt(scale, 1, toGo);
    if (motion) rows.trackErrorDeg[i] = turnFrom(rows.courseAtFootDeg[i]!, rows.trackDeg[i]!);
    const doubts = doubtsAt(motion, start + i);
    rows.trackSdDeg[i] = doubts.trackSdDeg;
    rows.positionSdNm[i] = doubts.positionSdNm;
  }
  return rows;
}

/** Sets 1 where the log was silent before a row of the span. */
export function markGaps(gapBefore: Uint8Array, motion: Motion | null, { start, end }: Span): void {
  for (const s of motion?.spans ?? []) {
    if (s.start > start && s.start < end) gapBefore[s.start - start] = 1;
  }
}

/** Standard deviations of the track angle and of a position axis at a row of the motion (or of a log without times). */
export function doubtsAt(
  motion: Motion | null,
  row: number,
): { readonly trackSdDeg: AngleSize; readonly positionSdNm: NauticalMiles } {
  if (!motion) return { trackSdDeg: Number.NaN, positionSdNm: SLOW_POSITION_SD };
  const sd = motion.velocitySd[row]! / Math.max(1, motion.groundSpeed[row]!);
  const smoothed = motion.positionSd[row]! / METRES_PER_NAUTICAL_MILE;
  return {
    trackSdDeg: Math.min(180, sd * DEGREES_PER_RADIAN),
    positionSdNm: Math.hypot(smoothed, SLOW_POSITION_SD),
  };
}

/** The exercise as it stands against its arc, row by row. */
import type { ArcExercise } from "../brief/brief.ts";
import { distanceFlown, measureAround } from "../geodesy/index.ts";
import { cosDeg, direction, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, TurnDegrees } from "../quantity/units.ts";
import type { AlongLine } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { type CoursePath, doubtsAt, markGaps } from "./path.ts";

/** Rows of one arc. NaN where not known. */
export interface ArcRows extends AlongLine {
  readonly length: number;
  /** Path row of row 0. */
  readonly pathStart: number;
  readonly timed: boolean;
  /** NaN throughout where the log has no times. */
  readonly timeMs: Float64Array;
  /** True azimuth at the station. */
  readonly radialDeg: Float64Array;
  /** TurnDegrees of the arc behind the aircraft; negative before its first radial. */
  readonly goneDeg: Float64Array;
  readonly distanceNm: Float64Array;
  /** Distance less radius, outside positive. */
  readonly deviationNm: Float64Array;
  /** Along the arc from its first radial, and right of it positive: the same as of a course. */
  readonly alongNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** Direction of the arc at the aircraft: its tangent. */
  readonly courseAtFootDeg: Float64Array;
  readonly trackDeg: Float64Array;
  /** Track less tangent, right positive. */
  readonly trackErrorDeg: Float64Array;
  readonly trackSdDeg: Float64Array;
  /** Of the track against the tangent, which turns with the arc. */
  readonly turnRate: Float64Array;
  /** Right of the arc positive; full scale is one mile. */
  readonly needle: Float64Array;
  readonly fullScaleNm: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly headingDeg: Float64Array;
  readonly altitudeFt: Float64Array;
  readonly positionSdNm: Float64Array;
  /** Distance over the ground from row 0. */
  readonly flownNm: Float64Array;
  readonly gapBefore: Uint8Array;
}

/** +1 where the arc turns right (the station off the right wing), -1 where it turns left. */
export const sideOf = ({ turns }: Pick<ArcExercise, "turns">): 1 | -1 => (turns === "right" ? 1 : -1);

/** TurnDegrees from the first radial to the last, the way of the arc, (0, 360). */
export const sweepOf = (exercise: ArcExercise): TurnDegrees =>
  direction(sideOf(exercise) * (exercise.toRadial - exercise.fromRadial));

/** What counts as full scale where a distance is read instead of a needle: the published limit of an arc (FAA-S-ACS-8C, V.A). */
const ARC_FULL_SCALE: NauticalMiles = 1;
/** Without times a direction is taken over twice this: long against the noise of a position, short against a turn. Chosen. */
const HALF_CHORD: NauticalMiles = 0.15;

export function measureArcRows(
  exercise: ArcExercise,
  path: CoursePath,
  span: Span,
  motion: Motion | null,
  wind: WindEstimate | null,
): ArcRows {
  const { start, end } = span;
  const length = end - start;
  if (!(length >= 2 && start >= 0 && end <= path.latitude.length))
    throw new RangeError(`invalid span of an exercise: ${start} to ${end}`);
  const [latitude, longitude] = [path.latitude.subarray(start, end), path.longitude.subarray(start, end)];
  const around = measureAround(exercise.fix, latitude, longitude);
  const side = sideOf(exercise);
  const sweep = sweepOf(exercise);
  const column = () => new Float64Array(length).fill(Number.NaN);
  const cut = (source: Float64Array | undefined | null) => source?.subarray(start, end) ?? column();
  const rows: ArcRows = {
    length,
    pathStart: start,
    timed: path.time !== null,
    timeMs: cut(path.time),
    radialDeg: around.radial,
    goneDeg: column(),
    distanceNm: around.distance.map(nauticalMilesFromMetres),
    deviationNm: column(),
    alongNm: column(),
    crossTrackNm: column(),
    courseAtFootDeg: around.outward.map((outward) => direction(outward + side * 90)),
    trackDeg: cut(motion?.trackAngle),
    trackErrorDeg: column(),
    trackSdDeg: column(),
    turnRate: column(),
    needle: column(),
    fullScaleNm: new Float64Array(length).fill(ARC_FULL_SCALE),
    groundSpeedKt: cut(motion?.groundSpeed),
    headingDeg: cut(wind?.alongFlight.heading),
    altitudeFt: cut(path.altitude),
    positionSdNm: column(),
    flownNm: distanceFlown(latitude, longitude).map(nauticalMilesFromMetres),
    gapBefore: new Uint8Array(length),
  };
  markGaps(rows.gapBefore, motion, span);
  for (let i = 0; i < length; i++) {
    const gone = direction(side * (rows.radialDeg[i]! - exercise.fromRadial));
    rows.goneDeg[i] = gone > (360 + sweep) / 2 ? gone - 360 : gone;
    rows.deviationNm[i] = rows.distanceNm[i]! - exercise.radius;
    rows.alongNm[i] = (rows.goneDeg[i]! / DEGREES_PER_RADIAN) * exercise.radius;
    rows.crossTrackNm[i] = -side * rows.deviationNm[i]!;
    rows.needle[i] = rows.crossTrackNm[i]! / ARC_FULL_SCALE;
    if (motion) {
      const error = turnFrom(rows.courseAtFootDeg[i]!, rows.trackDeg[i]!);
      const round = (rows.groundSpeedKt[i]! * cosDeg(error)) / 3600 / rows.distanceNm[i]!;
      rows.trackErrorDeg[i] = error;
      rows.turnRate[i] = motion.turnRate[start + i]! - side * round * DEGREES_PER_RADIAN;
    }
    const doubts = doubtsAt(motion, start + i);
    rows.trackSdDeg[i] = doubts.trackSdDeg;
    rows.positionSdNm[i] = doubts.positionSdNm;
  }
  if (!motion) errorsByDistance(rows, side);
  return rows;
}

/** Without times: the angle to the tangent by how fast the distance changes along the way flown. */
function errorsByDistance({ length, distanceNm, flownNm, trackErrorDeg }: ArcRows, side: 1 | -1): void {
  let [behind, ahead] = [0, 0];
  for (let i = 0; i < length; i++) {
    while (behind < i && flownNm[i]! - flownNm[behind + 1]! >= HALF_CHORD) behind++;
    while (ahead < length - 1 && (ahead <= i || flownNm[ahead]! - flownNm[i]! < HALF_CHORD)) ahead++;
    const way = flownNm[ahead]! - flownNm[behind]!;
    const outward = way > 0 ? (distanceNm[ahead]! - distanceNm[behind]!) / way : 0;
    trackErrorDeg[i] = -side * Math.asin(Math.max(-1, Math.min(1, outward))) * DEGREES_PER_RADIAN;
  }
}

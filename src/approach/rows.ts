/** The approach row by row: where the aircraft was against the final course and the glide path. */

import type { ApproachExercise } from "../brief/brief.ts";
import { measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { rateNeeded } from "../quantity/descent.ts";
import {
  DEGREES_PER_RADIAN,
  METRES_PER_NAUTICAL_MILE,
  METRES_PER_SECOND_PER_KNOT,
  nauticalMilesFromMetres,
  STANDARD_GRAVITY,
} from "../quantity/factor.ts";
import { type SilentBefore, silencesOf } from "../quantity/silence.ts";
import type { Span } from "../quantity/span.ts";
import type { Degrees, FeetMsl, UtcMillis } from "../quantity/units.ts";
import { THRESHOLD_CROSSING } from "../standard/approach-guidance.ts";
import type { AlongLine } from "../track/index.ts";
import { SLOW_POSITION_SD } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import type { Column, Track } from "../track/track.ts";
import type { WindEstimate } from "../wind/wind.ts";
import { fullScaleAt, type NeedleGuide, nearStation, needleAt } from "./guidance.ts";
import type { HeightDatum } from "./height.ts";
import { deviationFrom, type PathGuide } from "./vertical.ts";

/** The used flight, one row a point; rows are those of the motion where there is one. */
export interface ApproachPath {
  /** Null where the log has no times. */
  readonly time: Column<UtcMillis> | null;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  readonly altitude: Column<FeetMsl>;
  /** As of the track: where its heights are on 1013.25 hPa. */
  readonly heightsBy?: Track["heightsBy"];
}

/** Rows of one approach. Right of course and above the path positive. NaN where not known. */
export interface ApproachRows extends AlongLine {
  /** Path row of row 0. */
  readonly pathStart: number;
  /** From the threshold, in the direction of the final: negative before it. */
  readonly alongNm: Float64Array;
  /** Before the threshold positive. */
  readonly distanceNm: Float64Array;
  /** The needle where it is judged: NaN within a mile of a station, where `needle` is as it would be a mile from it. */
  readonly judgedNeedle: Float64Array;
  readonly trackDeg: Float64Array;
  readonly headingDeg: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly bankDeg: Float64Array;
  readonly positionSdNm: Float64Array;
  /** Corrected by the datum. */
  readonly altitudeFt: Float64Array;
  /** Above the threshold. */
  readonly heightFt: Float64Array;
  readonly heightSdFt: Float64Array;
  readonly verticalFpm: Float64Array;
  /** The descent that would lead to the threshold crossing height from here, as a vertical speed: negative down. */
  readonly neededFpm: Float64Array;
  readonly pathDeg: Float64Array;
  readonly pathFt: Float64Array;
  readonly pathNeedle: Float64Array;
  /** One standard deviation of the vertical needle, from the doubt of the height. */
  readonly pathNeedleSd: Float64Array;
  /** From the path to a full vertical deflection. */
  readonly pathFullScaleFt: Float64Array;
  /** The length of the silence of the log that ends at a row; null where none does, and without times. */
  readonly silentBefore: SilentBefore;
}

export interface RowsFrom {
  readonly exercise: ApproachExercise;
  readonly guide: NeedleGuide;
  readonly pathGuide: PathGuide | null;
  readonly path: ApproachPath;
  readonly span: Span;
  readonly motion: Motion | null;
  readonly wind: WindEstimate | null;
  readonly datum: HeightDatum;
}

export function measureRows(from: RowsFrom): ApproachRows {
  const { exercise, guide, pathGuide, path, span, motion, wind, datum } = from;
  const { start, end } = span;
  const length = end - start;
  if (!(length >= 2 && start >= 0 && end <= path.latitude.length))
    throw new RangeError(`invalid span of an approach: ${start} to ${end}`);
  const line = measureColumns(
    exercise.course,
    path.latitude.subarray(start, end),
    path.longitude.subarray(start, end),
  );
  const column = () => new Float64Array(length).fill(Number.NaN);
  const cut = (source: Float64Array | undefined | null) => source?.subarray(start, end) ?? column();
  const airspeed = wind?.alongFlight.trueAirspeed;
  const seconds = path.time?.subarray(start, end).map((ms) => ms / 1000);
  const rows = {
    length,
    pathStart: start,
    timed: path.time !== null,
    timeMs: cut(path.time),
    alongNm: line.along.map(nauticalMilesFromMetres),
    distanceNm: line.along.map((m) => -nauticalMilesFromMetres(m)),
    crossTrackNm: line.across.map(nauticalMilesFromMetres),
    needle: column(),
    judgedNeedle: column(),
    courseAtFootDeg: line.courseAtFoot,
    fullScaleNm: column(),
    trackDeg: cut(motion?.trackAngle),
    trackErrorDeg: column(),
    trackSdDeg: column(),
    turnRate: cut(motion?.turnRate),
    headingDeg: cut(wind?.alongFlight.heading),
    groundSpeedKt: cut(motion?.groundSpeed),
    bankDeg: column(),
    positionSdNm: column(),
    altitudeFt: cut(path.altitude).map((v) => v + datum.correction),
    heightFt: column(),
    heightSdFt: column(),
    verticalFpm: cut(motion?.verticalSpeed),
    neededFpm: column(),
    pathDeg: column(),
    pathFt: column(),
    pathNeedle: column(),
    pathNeedleSd: column(),
    pathFullScaleFt: column(),
    gapBefore: new Uint8Array(length),
    silentBefore: seconds ? silencesOf(seconds) : () => null,
  };
  for (const s of motion?.spans ?? [])
    if (s.start > start && s.start < end) rows.gapBefore[s.start - start] = 1;
  const crossing = pathGuide?.crossing ?? THRESHOLD_CROSSING;
  for (let i = 0; i < length; i++) {
    const distance = rows.distanceNm[i]!;
    rows.needle[i] = needleAt(guide, distance, rows.crossTrackNm[i]!);
    if (!nearStation(guide, distance, rows.crossTrackNm[i]!)) rows.judgedNeedle[i] = rows.needle[i]!;
    rows.fullScaleNm[i] = fullScaleAt(guide, distance);
    const smoothed = motion ? motion.positionSd[start + i]! / METRES_PER_NAUTICAL_MILE : 0;
    rows.positionSdNm[i] = Math.hypot(smoothed, SLOW_POSITION_SD);
    const height = rows.altitudeFt[i]! - exercise.runway.elevation;
    rows.heightFt[i] = height;
    rows.heightSdFt[i] = datum.sdAt(rows.timeMs[i]!);
    const deviation = pathGuide && deviationFrom(pathGuide, distance, height);
    if (deviation) {
      rows.pathDeg[i] = deviation.degrees;
      rows.pathFt[i] = deviation.feet;
      rows.pathNeedle[i] = deviation.needle;
      rows.pathNeedleSd[i] = deviation.needlePerFoot * rows.heightSdFt[i]!;
      rows.pathFullScaleFt[i] = 1 / deviation.needlePerFoot;
    }
    if (!motion) continue;
    const speed = rows.groundSpeedKt[i]!;
    rows.trackErrorDeg[i] = turnFrom(line.courseAtFoot[i]!, rows.trackDeg[i]!);
    rows.trackSdDeg[i] = Math.min(
      180,
      (motion.velocitySd[start + i]! / Math.max(1, speed)) * DEGREES_PER_RADIAN,
    );
    if (distance > 0) rows.neededFpm[i] = -rateNeeded(height - crossing, distance, speed);
    // bank of a coordinated turn: tan(bank) = V * rate / g, with the airspeed where it is known
    const through = airspeed?.[start + i] || speed;
    const rate = rows.turnRate[i]! / DEGREES_PER_RADIAN;
    rows.bankDeg[i] =
      Math.atan((through * METRES_PER_SECOND_PER_KNOT * rate) / STANDARD_GRAVITY) * DEGREES_PER_RADIAN;
  }
  return rows;
}

/** Columns of one hold for drawings. */

/** A racetrack over the ground, from the fix to the fix, in the frame of its inbound course and by position. */
export interface RacetrackOutline {
  readonly alongNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  readonly latitude: Float64Array;
  readonly longitude: Float64Array;
}

/** One hold in the frame of its inbound course, one row a point, from the entry to the last pass. NaN where not known. */
export interface HoldSeries {
  readonly kind: "hold";
  /** Rows of the path: row i here is path row `pathStart + i`. */
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  /** From the fix along the inbound course; the pattern lies at negative values. */
  readonly alongNm: Float64Array;
  /** Right of the inbound course positive. */
  readonly crossTrackNm: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly altitudeFt: Float64Array;
  /** Lap from 0; -1 in the entry and after the last pass. */
  readonly lap: Int8Array;
  /** The racetrack that closes in the wind of all laps together, and in still air; null where there is none, or the wind or airspeed is not known. */
  readonly solved: RacetrackOutline | null;
  readonly stillAir: RacetrackOutline | null;
}

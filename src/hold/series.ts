/** Columns of one hold for drawings. */

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
}

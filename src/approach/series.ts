/** Columns of one approach for charts and maps. */

/** One approach along its final, one row a point. Right of course and above the path positive. NaN where not known. */
export interface ApproachSeries {
  readonly kind: "approach";
  /** Rows of the path: row i here is path row `pathStart + i`. */
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  /** Before the threshold positive. */
  readonly distanceToThresholdNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** Deviation over full scale, 1 = full. */
  readonly needle: Float64Array;
  /** Half of the width between the two full deflections. */
  readonly fullScaleNm: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly trackAngleErrorDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly bankDeg: Float64Array;
  /** Corrected by the datum that the facts name. */
  readonly altitudeFt: Float64Array;
  readonly heightAboveThresholdFt: Float64Array;
  /** Half-width of its 95 % interval. */
  readonly height95Ft: Float64Array;
  readonly verticalFpm: Float64Array;
  /** The vertical speed that leads from here to the threshold crossing height. */
  readonly neededFpm: Float64Array;
  readonly glidePathDeviationDeg: Float64Array;
  readonly glidePathDeviationFt: Float64Array;
  readonly glidePathNeedle: Float64Array;
  /** Height from the path to a full deflection. */
  readonly glidePathFullScaleFt: Float64Array;
  /** 1 on the judged final: from the final fix to the minimum, the missed approach or the threshold. */
  readonly judged: Uint8Array;
  /** Which of the facts' `segments` the row belongs to, from 0. */
  readonly segment: Uint8Array;
}

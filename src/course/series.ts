/** Columns of one course for charts and maps. */

/** One exercise along its course, one row a point. Right of course positive. NaN where not known. */
export interface CourseSeries {
  readonly kind: "course";
  /** Rows of the path: row i here is path row `pathStart + i`. */
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  /** From the course's origin, positive in its direction. */
  readonly alongNm: Float64Array;
  /** To the fix for `to` and `leg`, from it for `from`; never negative. */
  readonly distanceToFixNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** Deviation over full scale, 1 = full. */
  readonly needle: Float64Array;
  readonly trackAngleErrorDeg: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly altitudeFt: Float64Array;
  /** 1 where the row is judged. */
  readonly judged: Uint8Array;
}

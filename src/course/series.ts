/** Columns of one course, arc or descent for charts and maps. */

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

/** One arc, one row a point. NaN where not known. */
export interface ArcSeries {
  readonly kind: "arc";
  /** Rows of the path: row i here is path row `pathStart + i`. */
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  /** Along the arc from its first radial, and right of it positive. */
  readonly alongNm: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** The radial that the aircraft is on. */
  readonly radialTrueDeg: Float64Array;
  /** Degrees of the arc behind the aircraft; negative before its first radial. */
  readonly goneDeg: Float64Array;
  /** From the station, over the ground. */
  readonly distanceNm: Float64Array;
  /** Distance less the radius, outside positive. */
  readonly deviationNm: Float64Array;
  /** Track less the tangent of the arc, right positive. */
  readonly trackAngleErrorDeg: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly altitudeFt: Float64Array;
  /** 1 where the row is judged. */
  readonly judged: Uint8Array;
}

/** One descent to a height before a fix, one row a point. NaN where not known. Descending is positive here: rates and gradients down. */
export interface DescentSeries {
  readonly kind: "descent";
  /** Rows of the path: row i here is path row `pathStart + i`. */
  readonly pathStart: number;
  readonly timeMs: Float64Array;
  /** Along the way flown to the point where the height is wanted; negative past it. */
  readonly distanceToGoNm: Float64Array;
  readonly altitudeFt: Float64Array;
  /** To lose from here to the height by the point: ft/min at the present ground speed, and ft/NM. NaN past the point. */
  readonly neededDownFpm: Float64Array;
  readonly neededDownFtPerNm: Float64Array;
  readonly flownDownFpm: Float64Array;
  readonly flownDownFtPerNm: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  /** 1 from where the descent began to the point. */
  readonly judged: Uint8Array;
}

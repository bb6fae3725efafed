/** A stretch of the flight as it stands against a course, row by row: what is read of it to find joining and swings. */

/** Columns of one length. Right of course positive. */
export interface AgainstCourse {
  readonly length: number;
  /** False where the log has no times; then `timeMs` is NaN throughout. */
  readonly timed: boolean;
  readonly timeMs: Float64Array;
  readonly crossTrackNm: Float64Array;
  /** Deviation over full scale. */
  readonly needle: Float64Array;
  /** Track less course at the foot. */
  readonly trackErrorDeg: Float64Array;
  readonly turnRate: Float64Array;
  /** 1 where the log is silent between this row and the one before. */
  readonly gapBefore: Uint8Array;
}

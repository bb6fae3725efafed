/** Columns for charts and maps that stand beside the document: too many numbers for JSON, rebuilt from the log at will. */
import type { ApproachSeries } from "../approach/series.ts";
import type { ArcSeries, CourseSeries, DescentSeries } from "../course/series.ts";
import type { HoldSeries } from "../hold/series.ts";

/** The used flight, one row a point. NaN where not known. */
export interface PathSeries {
  /** NaN throughout where the log has no times. */
  readonly timeMs: Float64Array;
  readonly latitude: Float64Array;
  readonly longitude: Float64Array;
  readonly altitudeFt: Float64Array;
  readonly groundSpeedKt: Float64Array;
  readonly trackTrueDeg: Float64Array;
  readonly headingTrueDeg: Float64Array;
  readonly velocityEastKt: Float64Array;
  readonly velocityNorthKt: Float64Array;
  /** 1 where the row is in a turn. */
  readonly turning: Uint8Array;
}

export interface FlightSeries {
  readonly path: PathSeries;
  /** By exercise; null where it was not flown or not compared. */
  readonly exercises: readonly (ExerciseSeries | null)[];
}

export type ExerciseSeries = CourseSeries | HoldSeries | ArcSeries | DescentSeries | ApproachSeries;

export type { ApproachSeries } from "../approach/series.ts";
export type { ArcSeries, CourseSeries, DescentSeries } from "../course/series.ts";
export type { HoldSeries } from "../hold/series.ts";

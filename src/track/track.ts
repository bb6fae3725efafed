/** The recorded flight as columns, one row a point, in recorded order. Undefined columns were not in the log. */
import type {
  Degrees,
  FeetMsl,
  Knots,
  MagneticDegrees,
  Metres,
  TrueDegrees,
  UtcMillis,
} from "../quantity/units.ts";

export type LogKind = "gpx" | "kml" | "igc" | "csv" | "simulated";

/** A column of numbers, all of one quantity; NaN where the log has no value. */
export type Column<_Quantity extends number> = Float64Array;

export interface Track {
  /** The name written in the log, or the file's name. */
  readonly name: string;
  readonly kind: LogKind;
  readonly length: number;
  /** NaN where the point has no time. */
  readonly time: Column<UtcMillis>;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  /** The log's height as given; GPX states no datum. NaN where missing. */
  readonly altitude: Column<FeetMsl>;
  /** What `altitude` is where it is no GNSS height: pressure altitude on 1013.25 hPa, which may lie hundreds of feet off sea level. */
  readonly heightsBy?: "pressure";
  /** Counts up at each break that the recorder itself made (a new track or segment). */
  readonly segment: Int32Array;
  /** Line of the file where the point begins, from 1; 0 where unknown. */
  readonly line: Int32Array;
  readonly hdop?: Float64Array;
  /** Satellites used for the fix, as logged. */
  readonly satellites?: Float64Array;
  /** By Doppler, as logged. */
  readonly groundSpeed?: Column<Knots>;
  /** By Doppler, as logged. */
  readonly trackAngle?: Column<TrueDegrees>;
  readonly headingTrue?: Column<TrueDegrees>;
  readonly headingMagnetic?: Column<MagneticDegrees>;
  readonly trueAirspeed?: Column<Knots>;
  readonly indicatedAirspeed?: Column<Knots>;
  readonly pressureAltitude?: Column<FeetMsl>;
  readonly outsideAir?: Float64Array;
  /** Standard deviation of a horizontal position, one axis, where the format states it. */
  readonly positionSd?: Column<Metres>;
}

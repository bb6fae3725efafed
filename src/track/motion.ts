/** The smoothed motion of the aircraft over the ground, one row for each used point of the log. */
import type { Span } from "../quantity/span.ts";
import type {
  Degrees,
  DegreesPerSecond,
  FeetMsl,
  FeetPerMinute,
  Knots,
  Metres,
  TrueDegrees,
  UtcMillis,
} from "../quantity/units.ts";
import type { Column } from "./track.ts";

export interface Motion {
  readonly length: number;
  /** Strictly increasing. */
  readonly time: Column<UtcMillis>;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  /** NaN where the log has no height. */
  readonly altitude: Column<FeetMsl>;
  readonly velocityEast: Column<Knots>;
  readonly velocityNorth: Column<Knots>;
  readonly groundSpeed: Column<Knots>;
  readonly trackAngle: Column<TrueDegrees>;
  readonly verticalSpeed: Column<FeetPerMinute>;
  /** Rate of change of the ground track, right positive. */
  readonly turnRate: Column<DegreesPerSecond>;
  /** Standard deviation of each smoothed position axis. */
  readonly positionSd: Column<Metres>;
  /** Standard deviation of each velocity axis. */
  readonly velocitySd: Column<Knots>;
  /** Runs without a gap: nothing is smoothed, turned or measured across their borders. */
  readonly spans: readonly Span[];
}

/** A motion that is being made. */
export type MotionColumns = { -readonly [K in keyof Motion]: Motion[K] };

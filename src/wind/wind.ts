/** Wind and true airspeed along a flight, with their doubt and what they rest on. Wind is *from* in every name that a person reads; components are of the air's motion over the ground. */
import type { AngleSize, FeetMsl, Knots, TrueDegrees } from "../quantity/units.ts";
import type { Column } from "../track/track.ts";

/** What an estimate of wind stands on, best first. */
export type RestsOn = "measured" | "turns" | "courses" | "prior" | "nothing";

/**
 * How much of the wind is known: `full` = direction and speed; `along` = only the component along the track,
 * given the airspeed; `none` = not knowable from this log.
 */
export type WindKnowledge = "full" | "along" | "none";

/** Wind at each row of the motion. Components are the velocity of the air over the ground (toward, not from). */
export interface WindAlongFlight {
  readonly airEast: Column<Knots>;
  readonly airNorth: Column<Knots>;
  /** Variances and covariance of the two components, knots squared. */
  readonly varianceEast: Float64Array;
  readonly varianceNorth: Float64Array;
  readonly covariance: Float64Array;
  readonly trueAirspeed: Column<Knots>;
  readonly trueAirspeedSd: Column<Knots>;
  /** Direction of the air velocity (ground velocity less wind): the nose, without sideslip. NaN where knowledge is not full. */
  readonly heading: Column<TrueDegrees>;
  readonly headingSd: Column<AngleSize>;
  readonly knowledge: readonly WindKnowledge[];
  readonly restsOn: readonly RestsOn[];
  /** Standard deviation of the worse axis below which knowledge of what was said beforehand, or recorded, is full: wider where that was a wind, not an airspeed alone. */
  readonly saidLimit: Knots;
}

/** The 95 % ellipse of a wind vector: semi-axes, and the direction of the major one, [0, 180). */
export interface WindEllipse {
  readonly major: Knots;
  readonly minor: Knots;
  readonly majorAxis: TrueDegrees;
}

/** A mean wind over a leg, or over a flight. */
export interface WindFact {
  readonly knowledge: WindKnowledge;
  /** Null unless knowledge is `full`. */
  readonly from: TrueDegrees | null;
  readonly speed: Knots | null;
  /** Components of the air's motion along and across the mean track: tailwind positive, and wind that pushes to the right positive. */
  readonly along: Knots | null;
  readonly across: Knots | null;
  readonly along95: Knots | null;
  readonly across95: Knots | null;
  readonly ellipse95: WindEllipse;
  readonly trueAirspeed: Knots | null;
  readonly trueAirspeed95: Knots | null;
  readonly restsOn: RestsOn;
}

export interface WindEstimate {
  readonly alongFlight: WindAlongFlight;
  /** One for each leg given, in order. */
  readonly legs: readonly WindFact[];
  /** Mean over the flight, where it is known best; `along`/`across` are null. */
  readonly day: WindFact & { readonly altitude: FeetMsl | null };
  /** Priors of the user that took part, in the user's words. */
  readonly priorsUsed: readonly string[];
}

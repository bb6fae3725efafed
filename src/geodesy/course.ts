/** A course over the ground: a geodesic through a fix at a true azimuth, and where a place lies along and across it. */
import type { Metres, TrueDegrees } from "../quantity/units.ts";
import type { Position } from "./position.ts";

/**
 * The geodesic through `origin` whose azimuth there is `azimuth`. Along-track is counted from the origin,
 * positive in the direction of the course. `length` is null where the course has no far end.
 */
export interface Course {
  readonly origin: Position;
  readonly azimuth: TrueDegrees;
  readonly length: Metres | null;
}

/** A place against a course. `courseAtFoot` is the azimuth of the geodesic at the foot of the perpendicular. */
export interface AlongAcross {
  readonly along: Metres;
  /** Right of course positive. */
  readonly across: Metres;
  readonly courseAtFoot: TrueDegrees;
}

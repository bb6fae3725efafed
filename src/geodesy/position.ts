/** A place on the WGS84 ellipsoid. */
import type { Degrees } from "../quantity/units.ts";

export interface Position {
  readonly latitude: Degrees;
  readonly longitude: Degrees;
}

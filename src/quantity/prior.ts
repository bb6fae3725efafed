/** What the user says beforehand of airspeed and wind. */
import type { FeetMsl, Knots, TrueDegrees } from "./units.ts";

export interface AirspeedPrior {
  readonly trueAirspeed: Knots;
  /** Standard deviation. */
  readonly doubt: Knots;
}

/** A forecast or reported wind. */
export interface WindPrior {
  readonly from: TrueDegrees;
  readonly speed: Knots;
  /** Standard deviation of each component. */
  readonly doubt: Knots;
  readonly altitude: FeetMsl | null;
  /** The user's own word, as in "forecast". */
  readonly source: string;
}

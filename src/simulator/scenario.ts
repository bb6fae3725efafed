/** A scenario: everything that decides a flight except the seed. */
import type { Position } from "../geodesy/position.ts";
import type { AngleSize, FeetMsl, Metres, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { WindModel } from "./air.ts";
import type { AirspeedModel } from "./airspeed.ts";
import type { Wander } from "./gauss-markov.ts";
import type { Drawn } from "./random.ts";
import type { Step } from "./script.ts";

export interface PilotModel {
  /** Wander of the heading that is aimed at, degrees. */
  readonly heading: Wander;
  /** Rate of turn, degrees per second, and how far each turn strays from it, as a share (standard deviation). */
  readonly turnRate: number;
  readonly turnRateSpread: number;
  readonly rollLag: Seconds;
  /** Turns to the left are held on for so many degrees past the heading wanted, and then put right. */
  readonly lateToLeft?: AngleSize;
}

export interface ReceiverModel {
  /** Slow error of each horizontal axis, metres; the height has twice that. */
  readonly bias: Wander;
  /** Standard deviation of the white error of each horizontal axis, metres; the height has twice that. */
  readonly white: Drawn;
  /** Decimals of the degrees in the log. */
  readonly decimals: number;
}

/**
 * How points are logged: each so many seconds (halves and wholes); adaptively, when so far off the straight line or
 * after so long; or from plots so many seconds apart with points drawn between them on straight lines.
 */
export type Logging =
  | { readonly every: Seconds; readonly plots?: Seconds }
  | { readonly off: Metres; readonly atMost: Seconds };

export interface Scenario {
  readonly name: string;
  /** One sentence: what the flight shows. */
  readonly about: string;
  readonly start: {
    readonly position: Position;
    readonly heading: TrueDegrees;
    readonly altitude: FeetMsl;
    readonly time: UtcMillis;
  };
  readonly wind: WindModel;
  readonly airspeed: AirspeedModel;
  readonly pilot: PilotModel;
  readonly receiver: ReceiverModel;
  readonly logging: Logging;
  readonly script: readonly Step[];
  /** The brief of the flight as YAML, or null. */
  readonly brief: string | null;
}

/** A hold as it was found in a flight: where, which way round, and each lap's turns and legs. */
import type { Position } from "../geodesy/position.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";

export type HoldEntry = "direct" | "teardrop" | "parallel";

/** One lap: over the fix, the turn outbound, the outbound leg, the turn inbound, the inbound leg to the fix again. */
export interface FoundLap {
  /** Rows, half open; each begins where the one before ends. */
  readonly outboundTurn: Span;
  readonly outbound: Span;
  readonly inboundTurn: Span;
  readonly inbound: Span;
  /** The same borders in time, finer than the rows of a coarse log. Good to about 2 s. */
  readonly times: LapTimes;
  /** False where it was left before the fix came again. */
  readonly complete: boolean;
}

export interface LapTimes {
  /** Over or abeam the fix: the turn outbound begins. */
  readonly start: UtcMillis;
  /** Rolled out of the turn outbound. */
  readonly outbound: UtcMillis;
  readonly inboundTurn: UtcMillis;
  /** The inbound heading is reached. */
  readonly inbound: UtcMillis;
  /** Over or abeam the fix again, or left. */
  readonly end: UtcMillis;
}

export interface FoundHold {
  /** Rows, from the first pass over the fix (the entry) to the last. */
  readonly span: Span;
  readonly turns: TurnSide;
  readonly fix: Position;
  readonly fix95: NauticalMiles;
  readonly inbound: TrueDegrees;
  readonly inbound95: AngleSize;
  /** Whether the inbound course is sure: which end is the fix, and which line was meant. */
  readonly sure: boolean;
  /** A racetrack that may have been a traffic circuit: no height and no runway tells them apart. */
  readonly maybeCircuit: boolean;
  /** Null where the log begins in the hold. */
  readonly entry: HoldEntry | null;
  readonly laps: readonly FoundLap[];
  /** One lap, which neither a second one nor the entry before it shows to be a hold's: it may be a turn to lose time. */
  readonly alone: boolean;
  /** When a hold at the same fix before it ended: earlier passes of the fix are of that. Missing where there was none. */
  readonly heldBefore?: UtcMillis;
}

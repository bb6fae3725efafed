/** A hold as the flight itself shows it: where its fix and inbound course lie, how it was entered, its laps. */
import type { Position } from "../geodesy/position.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, TrueDegrees } from "../quantity/units.ts";
import type { HoldEntry, TurnSide } from "../standard/holding.ts";

/** One lap. Spans are rows of the motion; those of turns reach over what the legs call turns. */
export interface FoundLap {
  readonly outboundTurn: Span;
  readonly outbound: Span;
  readonly inboundTurn: Span;
  readonly inbound: Span;
  /** Flown to the fix again. */
  readonly complete: boolean;
}

export interface FoundHold {
  /** From the entry to the last pass of the fix. */
  readonly span: Span;
  readonly turns: TurnSide;
  readonly fix: Position;
  /** Half-width of the 95 % interval of the fix, and of the inbound course. */
  readonly fix95: NauticalMiles;
  readonly inbound: TrueDegrees;
  readonly inbound95: AngleSize;
  /** Whether the inbound course is sure. */
  readonly sure: boolean;
  /** Neither a fix nor a height tells it from a traffic circuit. */
  readonly maybeCircuit: boolean;
  readonly entry: HoldEntry | null;
  readonly laps: readonly FoundLap[];
}

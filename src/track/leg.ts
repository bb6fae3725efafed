/** A flight cut into straights and turns. */
import type { Span } from "../quantity/span.ts";
import type { TurnDegrees } from "../quantity/units.ts";

export interface Leg {
  readonly kind: "straight" | "turn";
  /** Rows of the motion. */
  readonly span: Span;
  /** Change of ground track over the leg, right positive; may exceed 360. */
  readonly turn: TurnDegrees;
}

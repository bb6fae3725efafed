/** Arms of no length: where one turn passes into the next without a straight between them. */

import type { Span } from "../quantity/span.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";

export interface Piece {
  /** A border: where a turn one way follows one the other way. A hinge: within a turn one way. */
  readonly kind: "straight" | "turn" | "border" | "hinge";
  readonly span: Span;
  readonly turn: number;
}

/** A turn of about a full circle may be two half turns, degrees. */
const FULL_TURN: readonly [number, number] = [300, 440];
/** Then the turning slackens between them to less than this share of its mean. Tuned. */
const SLACK = 0.75;

/** The legs, with a hinge between turns of opposite sides and where a full circle is two half turns. */
export function hinged(motion: Motion, legs: readonly Leg[]): Piece[] {
  const pieces: Piece[] = [];
  for (const leg of legs) {
    const last = pieces.at(-1);
    if (leg.kind === "turn" && last?.kind === "turn" && last.span.end === leg.span.start)
      pieces.push({ ...hingeAt(leg.span.start), kind: "border" });
    const size = Math.abs(leg.turn);
    const slack =
      leg.kind === "turn" && size >= FULL_TURN[0] && size <= FULL_TURN[1] ? slackest(motion, leg) : null;
    if (slack === null) pieces.push(leg);
    else
      pieces.push(
        { kind: "turn", span: { start: leg.span.start, end: slack.row }, turn: slack.before },
        hingeAt(slack.row),
        { kind: "turn", span: { start: slack.row, end: leg.span.end }, turn: leg.turn - slack.before },
      );
  }
  return pieces;
}

const hingeAt = (row: number): Piece => ({ kind: "hinge", span: { start: row, end: row }, turn: 0 });

/** The row in the middle part of a turn where the turning is slowest, and the turn up to there; null where it is steady. */
function slackest(
  motion: Motion,
  { span, turn }: Leg,
): { readonly row: number; readonly before: number } | null {
  const { time, turnRate } = motion;
  const seconds = (time[span.end - 1]! - time[span.start]!) / 1000;
  let turned = 0;
  let best: { row: number; before: number } | null = null;
  let least = SLACK * (Math.abs(turn) / Math.max(1, seconds));
  for (let k = span.start; k < span.end - 1; k++) {
    const rate = Math.abs((turnRate[k]! + turnRate[k + 1]!) / 2);
    turned += (((turnRate[k]! + turnRate[k + 1]!) / 2) * (time[k + 1]! - time[k]!)) / 1000;
    const share = turned / turn;
    if (share > 0.3 && share < 0.7 && rate < least) {
      least = rate;
      best = { row: k, before: turned };
    }
  }
  return best;
}

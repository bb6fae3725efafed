/**
 * The moment at which a straight becomes a turn or a turn a straight, finer than the log's interval.
 *
 * A leg begins at a row; what happened between two rows 5 or 20 s apart is told by the track on either side: on the
 * straight it stands, in the turn it runs; where the one meets the other, the turn began or ended. A roll in or out
 * counts half.
 */
import { turnFrom } from "../quantity/angle.ts";
import type { Seconds, UtcMillis } from "../quantity/units.ts";
import type { Leg } from "./leg.ts";
import type { Motion } from "./motion.ts";

/** Track looked at on either side, s: beyond the roll, and not so far that a turn in wind changes its rate much. Chosen. */
const NEAREST: Seconds = 2;
const FARTHEST: Seconds = 15;
/** In slower turns than this, deg/s, the meeting is ill defined. Chosen. */
const LEAST_RATE = 0.3;
/** The moment lies no farther from the rows at the border, s. */
const SLACK: Seconds = 4;

/** Between two legs that follow each other within a span of the motion, one of them a turn; ms of UTC. */
export function boundaryBetween(motion: Motion, before: Leg, after: Leg): UtcMillis {
  const { time } = motion;
  const row = after.span.start;
  const [last, first] = [time[row - 1]!, time[row]!];
  const middle = (last + first) / 2;
  const turnFirst = before.kind === "turn";
  const [turn, straight] = turnFirst ? [before, after] : [after, before];
  const inTurn = lineThrough(motion, turn, middle);
  const onStraight = lineThrough(motion, straight, middle);
  if (!inTurn || !onStraight || Math.abs(inTurn.rate) < LEAST_RATE) return middle;
  const seconds = turnFrom(inTurn.angle, onStraight.mean) / inTurn.rate;
  return Math.max(last - SLACK * 1000, Math.min(first + SLACK * 1000, middle + seconds * 1000));
}

/** The track of a leg near a moment: at that moment and its rate by a straight line, and its mean. */
function lineThrough(motion: Motion, { span }: Leg, moment: UtcMillis) {
  const { time, trackAngle } = motion;
  let [n, sumT, sumA, sumTT, sumTA] = [0, 0, 0, 0, 0];
  let reference = Number.NaN;
  const add = (k: number) => {
    if (n === 0) reference = trackAngle[k]!;
    const t = (time[k]! - moment) / 1000;
    const a = turnFrom(reference, trackAngle[k]!);
    n++;
    sumT += t;
    sumA += a;
    sumTT += t * t;
    sumTA += t * a;
  };
  const near = (k: number) => Math.abs(time[k]! - moment) / 1000;
  const backward = time[span.start]! < moment;
  // at least two rows, however far apart they are
  for (let i = 0; i < span.end - span.start; i++) {
    const k = backward ? span.end - 1 - i : span.start + i;
    if (near(k) < NEAREST) continue;
    if (near(k) > FARTHEST && n >= 2) break;
    add(k);
  }
  if (n < 2) return null;
  const rate = (n * sumTA - sumT * sumA) / (n * sumTT - sumT * sumT);
  return { angle: reference + (sumA - rate * sumT) / n, rate, mean: reference + sumA / n };
}

/** A turn as flown: when the wings began and ceased to bank, how fast it turned through the air, and at what bank. */
import { turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, Knots, Seconds, UtcMillis } from "../quantity/units.ts";
import { bankOfRate } from "../wind/index.ts";
import { directionAt, type HoldFrame, meanBetween, rowsBetween } from "./frame.ts";

/** A turn begins and ends where its rate is this share of what it is in the middle: half, so that smoothing moves neither. */
const HALF = 0.5;
/**
 * The bank begins so long before half the rate is reached; at its end half the rate is all but level, since the last
 * degrees are turned slowly. Tuned on simulation seeds 1 to 100, where a turn ends 3 degrees before its heading.
 */
const ROLL_IN: Seconds = 2;
/** Borders are looked for so far outside the span given, and in all of it. */
const OUTSIDE: Seconds = 20;

export interface TurnFlown {
  /** The wings begin to bank. */
  readonly from: UtcMillis;
  /** The wings are level. */
  readonly to: UtcMillis;
  /** Size of the rate in the turn, rolling left out: of the heading, or of the track where that is not known. */
  readonly rate: DegreesPerSecond;
  readonly bank: AngleSize | null;
  readonly seconds: Seconds;
}

/** Null where the span has no rows; where they are too few to tell a rate in, the turn is as long as they are. */
export function measureTurn(frame: HoldFrame, span: Span, side: 1 | -1): TurnFlown | null {
  const { start, end } = span;
  if (!(end > start) || start < 0 || end > frame.length) return null;
  const { time, length } = frame;
  const known = (from: number, to: number) => !frame.heading.subarray(from, to).some(Number.isNaN);
  const byHeading = known(Math.max(0, start - 2), Math.min(length, end + 2));
  const nose = byHeading ? frame.heading : frame.track;
  /** Mean rate from row i - 1 to row i, toward the side of the turn. */
  const rate = (i: number) => (side * turnFrom(nose[i - 1]!, nose[i]!)) / ((time[i]! - time[i - 1]!) / 1000);
  const middles = (i: number) => (time[i - 1]! + time[i]!) / 2;

  let turned = 0;
  for (let i = start + 1; i < end; i++) turned += side * turnFrom(nose[i - 1]!, nose[i]!);
  const typical = steadyRate(frame, nose, span, side, turned);
  if (!(typical > 0)) return asGiven(frame, span, turned);
  const limit = HALF * typical;
  /** From a border outward while it still turns, else inward until it turns; the time when the rate passed the limit. */
  const border = (row: number, way: 1 | -1): UtcMillis => {
    const fast = (i: number) => rate(i) >= limit;
    const inside = (i: number) =>
      i >= 1 &&
      i < length &&
      (way * (i - row) < 0 ? i > start && i < end : Math.abs(time[i]! - time[row]!) <= OUTSIDE * 1000);
    let i = Math.max(1, Math.min(length - 1, row));
    const move = fast(i) ? way : (-way as 1 | -1);
    while (inside(i + move) && fast(i + move) === fast(i)) i += move;
    if (!inside(i + move)) return time[row]!;
    const [a, b] = [rate(i), rate(i + move)];
    const share = a === b ? 0.5 : (limit - a) / (b - a);
    return middles(i) + Math.max(0, Math.min(1, share)) * (middles(i + move) - middles(i));
  };
  const from = border(start + 1, -1) - ROLL_IN * 1000;
  const to = border(end - 1, 1);
  const speed = frame.wind ? airspeedBetween(frame, from, to) : null;
  return {
    from,
    to,
    rate: typical,
    bank: byHeading && speed !== null ? bankOfRate(typical, speed) : null,
    seconds: (to - from) / 1000,
  };
}

function asGiven({ time }: HoldFrame, { start, end }: Span, turned: number): TurnFlown {
  const [from, to] = [time[start]!, time[end - 1]!];
  const seconds = (to - from) / 1000;
  return { from, to, rate: seconds > 0 ? Math.abs(turned) / seconds : 0, bank: null, seconds };
}

/** From a fifth to four fifths of the angle turned. */
function steadyRate(frame: HoldFrame, nose: Float64Array, { start, end }: Span, side: 1 | -1, whole: number) {
  let [turned, a, b] = [0, Number.NaN, Number.NaN];
  for (let i = start + 1; i < end; i++) {
    const step = side * turnFrom(nose[i - 1]!, nose[i]!);
    const when = (angle: number) =>
      frame.time[i - 1]! + ((angle - turned) / step) * (frame.time[i]! - frame.time[i - 1]!);
    if (Number.isNaN(a) && turned + step >= 0.2 * whole) a = when(0.2 * whole);
    if (Number.isNaN(b) && turned + step >= 0.8 * whole) b = when(0.8 * whole);
    turned += step;
  }
  return (0.6 * whole) / ((b - a) / 1000);
}

/** Mean true airspeed; null where it is not known throughout. */
function airspeedBetween(frame: HoldFrame, from: UtcMillis, to: UtcMillis): Knots | null {
  const { wind, start, length } = frame;
  if (!wind || rowsBetween(frame, from, to).end === 0) return null;
  const speed = meanBetween(frame, wind.alongFlight.trueAirspeed.subarray(start, start + length), from, to);
  return Number.isNaN(speed) ? null : speed;
}

/** An inbound turn ends within this of the heading for the leg: the last degrees are turned slowly. As the finder reads it (`laps.ts`). */
const ROLLED_OUT: AngleSize = 3;
/** ... or short of it, but no farther off than this, where the heading changes by no more than so much in so long. Chosen; tuned there. */
const STILL_TURNING: AngleSize = 1;
const LOOK_MS = 2000;
const STEP_MS = 250;

/**
 * An inbound turn ends where the nose (or the track, where the wind is not known) comes to the direction that holds
 * the course, though it may go on to a cut back to it: there a racetrack that closes would have rolled out. Where it
 * never comes to it, it ends where it ceases to turn.
 */
export function endedOn(
  frame: HoldFrame,
  turn: TurnFlown,
  side: 1 | -1,
  correction: number | null,
): TurnFlown {
  const nose = correction === null ? frame.track : frame.heading;
  const wanted = frame.course.azimuth + (correction ?? 0);
  const at = (t: UtcMillis) => directionAt(frame, nose, t);
  const ending = (to: UtcMillis) => ({ ...turn, to, seconds: (to - turn.from) / 1000 });
  const last = Math.min(frame.time[frame.length - 1]! - LOOK_MS, turn.to + OUTSIDE * 1000);
  for (let t = (turn.from + turn.to) / 2; t <= last; t += STEP_MS) {
    const short = side * turnFrom(at(t), wanted);
    if (Math.abs(short) < 90 && short <= ROLLED_OUT) return ending(t);
    const turned = side * turnFrom(at(t), at(t + LOOK_MS));
    if (t > turn.to && turned <= STILL_TURNING) return ending(t);
  }
  return turn;
}

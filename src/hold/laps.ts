/** The laps of a hold: each turn and leg with its borders in time and in rows. */
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { Seconds, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { FixAndCourse } from "./fix-and-course.ts";
import type { FoundLap, LapTimes } from "./found.ts";
import type { Ground, Place } from "./ground.ts";
import { usualRate } from "./slowness.ts";
import type { TurnEdges } from "./turn-edges.ts";

/** Rolled out within this of the inbound heading, degrees. Tuned. */
const ROLLED_OUT = 3;
/** A turn goes on while the heading changes by so much in two seconds, degrees. Tuned. */
const STILL_TURNING = 1;
/** The fix is looked for so long after the turn inbound, s, and passed abeam within so many seconds of flight. Chosen. */
const INBOUND_SECONDS = 450;
const ABEAM_SECONDS = 40;
/** ... or so many times as far aside as on an earlier lap: laps that drift do so more and more. Tuned on simulation, seeds 1 to 1000: up to 1.9 times. */
const DRIFTS_ON = 2;
/** A single lap must come back nearer, and the nearer the longer its inbound leg: at first, less a second, never under. Tuned. */
const ALONE_SETTLES: readonly [Seconds, number] = [26, 0.1];
const ALONE_LEAST: Seconds = 4;
/** A turn over the fix takes no longer than so many times what it would at the usual bank or rate one, and so many seconds. Chosen. */
const SLOWEST = 1.6;
const HESITATION = 20;
/** The turn over the fix begins there; one that begins so much later was begun past the fix, s. Chosen. */
const LATE_SECONDS = 5;
/** ... and one that seems to begin so much earlier, up to so much, began with the end of a cut to the course, s. Tuned. */
const EARLY_SECONDS = 4;
const EARLIEST = 25;

/** `turns` alternate: over the fix, at the far end, over the fix. `overFix`: the entry shows that there is a fix, so that a single lap may drift as those of several do. */
export function lapsOf(
  motion: Motion,
  ground: Ground,
  turns: readonly TurnEdges[],
  side: 1 | -1,
  known: FixAndCourse,
  overFix: boolean,
): FoundLap[] {
  const laps: FoundLap[] = [];
  const heading = ground.headingFor(known.course);
  let begin = 0;
  let farthest = 0;
  while (begin + 1 < turns.length && !compact(ground, turns[begin]!)) begin += 2; // no lap: flown on and on before it
  for (let i = begin; i + 1 < turns.length; i += 2) {
    const out = turns[i]!;
    const back = turns[i + 1]!;
    const next = turns[i + 2]?.start ?? null;
    const inbound = Math.max(back.start, Math.min(reached(ground, back, heading, side), next ?? Infinity));
    const abeam = abeamAfter(
      ground,
      inbound,
      next ? next + EARLIEST * 1000 : inbound + INBOUND_SECONDS * 1000,
      known,
      turns.length < 4 && !overFix ? null : Math.max(ABEAM_SECONDS, DRIFTS_ON * farthest),
    );
    if (next) farthest = Math.max(farthest, secondsAside(ground, ground.place(next), known));
    const elsewhere =
      next !== null &&
      abeam !== null &&
      (next - abeam > LATE_SECONDS * 1000 || abeam - next > EARLY_SECONDS * 1000);
    const end =
      (elsewhere ? null : next) ?? abeam ?? Math.min(ground.times[1], inbound + INBOUND_SECONDS * 1000);
    const start = laps.at(-1)?.times.end ?? out.start;
    const times = {
      start,
      outbound: Math.max(out.end, start),
      inboundTurn: Math.max(back.start, out.end),
      inbound,
      end,
    };
    laps.push({ ...rowsOf(motion, ground.span, times), times, complete: next !== null || abeam !== null });
  }
  return laps;
}

/** Whether a turn was flown in one go. */
const compact = (ground: Ground, { start, end, before, after }: TurnEdges): boolean => {
  const rate = usualRate(ground.trueAirspeed);
  return (end - start) / 1000 < HESITATION + (SLOWEST * Math.abs(after - before)) / rate;
};

/**
 * When a turn comes to the inbound heading, or ends before it: where it ceases to turn, which is after its ramp where the
 * last degrees are turned slowly. It may go on past the heading, or be taken back, into an intercept.
 */
function reached(ground: Ground, turn: TurnEdges, heading: TurnDegrees, side: 1 | -1): UtcMillis {
  const wanted = turn.after + turnFrom(turn.after, heading) - side * ROLLED_OUT;
  for (let t = turn.start; t < ground.times[1] - 2000; t += 500) {
    if (side * (ground.headingAt(t) - wanted) >= 0) return t;
    const stillTurning = side * (ground.headingAt(t + 2000) - ground.headingAt(t)) > STILL_TURNING;
    if (t > turn.end && !stillTurning) return t;
  }
  return turn.end;
}

/** Seconds of flight from the line of the inbound course. */
const secondsAside = (ground: Ground, at: Place, { fix, course }: FixAndCourse): Seconds =>
  Math.abs((at.east - fix.east) * cosDeg(course) - (at.north - fix.north) * sinDeg(course)) / ground.metres;

/** When the fix is passed or abeam on the way in, no farther aside than given (a single lap settles first); null where it is not. */
function abeamAfter(
  ground: Ground,
  from: UtcMillis,
  until: UtcMillis,
  known: FixAndCourse,
  within: Seconds | null,
): UtcMillis | null {
  const { fix, course } = known;
  const e = sinDeg(course);
  const n = cosDeg(course);
  let before = -Infinity;
  for (let t = from; t <= Math.min(until, ground.times[1]); t += 1000) {
    const p = ground.place(t);
    const along = (p.east - fix.east) * e + (p.north - fix.north) * n;
    if (along >= 0) {
      const part = before < 0 && Number.isFinite(before) ? along / (along - before) : 0;
      const settled = ALONE_SETTLES[0] - (ALONE_SETTLES[1] * (t - from)) / 1000;
      const aside = within ?? Math.max(ALONE_LEAST, settled);
      return secondsAside(ground, p, known) <= aside ? t - 1000 * part : null;
    }
    before = along;
  }
  return null;
}

function rowsOf(motion: Motion, { start, end }: Span, times: LapTimes) {
  const row = (t: UtcMillis) => firstAtOrAfter(motion.time, t, start, end);
  const span = (from: UtcMillis, to: UtcMillis): Span => ({
    start: row(from),
    end: Math.max(row(from), row(to)),
  });
  return {
    outboundTurn: span(times.start, times.outbound),
    outbound: span(times.outbound, times.inboundTurn),
    inboundTurn: span(times.inboundTurn, times.inbound),
    inbound: span(times.inbound, times.end),
  };
}

/** A direction on the map as true direction at a place east of the map's origin: meridians lean together. */
export function trueOnMap(course: number, east: number, latitude: number): number {
  return direction(
    course + (east / 6_371_009) * Math.tan(latitude / DEGREES_PER_RADIAN) * DEGREES_PER_RADIAN,
  );
}

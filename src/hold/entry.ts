/** How the hold was entered, from what was flown between the first pass over the fix and the first lap. */
import { turnFrom } from "../quantity/angle.ts";
import type { UtcMillis } from "../quantity/units.ts";
import { bendIn } from "./arms.ts";
import type { FixAndCourse } from "./fix-and-course.ts";
import type { HoldEntry } from "./found.ts";
import type { Ground } from "./ground.ts";
import { median } from "./likelihood.ts";
import { nearest, SEEN_SECONDS, trackBetween } from "./near-fix.ts";
import type { Reading } from "./reading.ts";
import type { TurnEdges } from "./turn-edges.ts";

export interface Entered {
  readonly entry: HoldEntry | null;
  /** First pass over the fix that the log shows. */
  readonly start: UtcMillis;
  /** From the first turn of the first lap on: over the fix, at the far end, over the fix, and so on. */
  readonly turns: readonly TurnEdges[];
}

/** Heading on reaching the fix less inbound course, on the holding side positive: from here on no direct entry, degrees. FAA AIM 5-3-8 j.7: the 70 degree line. */
const DIRECT_UP_TO = 110;
/** Within this of it either entry may be flown (AIM: 5 degrees), and the arrival is known no better. Chosen. */
const NEAR_BORDER = 10;
/** A teardrop leads so far from the reciprocal of the course, to the holding side. FAA AIM 5-3-8 j.3. */
const TEARDROP_ANGLE = 30;
/** A small turn over the fix begins an outbound leg that is looked for so far back, s, and passes the fix within so many seconds of flight. Tuned. */
const SMALL_TURN_BACK: readonly [number, number] = [25, 450];
const OVER_SECONDS = 10;
/** A small turn is over within this of the outbound heading, degrees. Chosen: that wanders. */
const ROLLED_OUT = 6;
/** Or once it changes by less than this in three seconds, degrees, having had so long to begin, ms. Chosen. */
const STILL_TURNING = 2;
const STARTS_MS = 8000;
/** A log may begin on a leg of the hold, which takes no longer than this, s, and is flown in this direction within so many degrees. Chosen. */
const LONGEST_LEG = 120;
const ON_LEG = 35;
/** The turn over the fix in a teardrop is smaller than this, degrees: from 110 off the course to 150. Chosen, with room for wind. */
const TEARDROP_TURN = 85;

export function entryOf(ground: Ground, side: 1 | -1, reading: Reading, known: FixAndCourse): Entered {
  const { turns } = reading;
  const [begin] = ground.times;
  const { metres } = ground;
  const first = turns[0]!;
  const direct = (arrival: number, leg: { readonly from: UtcMillis; readonly to: UtcMillis }) =>
    isDirect(
      side * turnFrom(known.course, arrival),
      side * turnFrom(known.course + 180, trackBetween(ground, leg)),
      () =>
        median(outboundTracks(ground, reading).map((track) => side * turnFrom(known.course + 180, track))),
    );

  // a log that begins shortly before, on a leg of the hold
  const beginsOn = (course: number) =>
    first.start - begin < LONGEST_LEG * 1000 &&
    Math.abs(turnFrom(course, trackBetween(ground, { from: begin, to: first.start }))) < ON_LEG &&
    bendIn(ground, begin, first.start) < ON_LEG;

  if (reading.sense.first === 0) {
    if (reading.before) return { entry: "parallel", start: reading.before.time, turns };
    if (first.start - begin < SEEN_SECONDS * 1000 || beginsOn(known.course))
      return { entry: null, start: first.start, turns };
    const small = side * (first.after - first.before) < TEARDROP_TURN;
    if (small && turns.length >= 4 && !direct(first.before, { from: first.end, to: turns[1]!.start }))
      return { entry: "teardrop", start: first.start, turns: turns.slice(2) };
    return { entry: "direct", start: first.start, turns };
  }

  // the row begins with a turn inbound: what was flown before it?
  const [least, most] = SMALL_TURN_BACK;
  const back =
    reading.before ?? nearest(ground, known.fix, first.start - most * 1000, first.start - least * 1000);
  if (back && back.distance < OVER_SECONDS * metres && back.time - begin > SEEN_SECONDS * 1000) {
    const arrival = ground.headingAt(back.time - 5000);
    const leg = { from: Math.min(back.time + 15_000, first.start - 10_000), to: first.start };
    if (side * (first.before - arrival) > 0 && direct(arrival, leg)) {
      const small = smallTurn(ground, back.time, arrival, first, side);
      return { entry: "direct", start: back.time, turns: [small, ...turns] };
    }
    return { entry: "teardrop", start: back.time, turns: turns.slice(1) };
  }
  const start = turns[1]!.start;
  const seen = first.start - begin >= SEEN_SECONDS * 1000 && !beginsOn(known.course + 180);
  return { entry: seen ? "direct" : null, start, turns: turns.slice(1) };
}

/**
 * Whether the first leg outbound is a lap's, not a teardrop's. Angles in degrees, to the side of the turns positive:
 * of the arrival from the inbound course, of the leg's track from the reciprocal, and of the tracks of later legs.
 * Near the border of the sectors both are right, and what was flown decides.
 */
function isDirect(arrival: number, leg: number, later: () => number): boolean {
  if (Math.abs(arrival - DIRECT_UP_TO) > NEAR_BORDER) return arrival <= DIRECT_UP_TO && arrival > -90;
  const usual = later();
  return Math.abs(leg - (Number.isNaN(usual) ? 0 : usual)) < Math.abs(leg + TEARDROP_ANGLE);
}

/** Tracks of the outbound legs after the first turn over the fix that follows an inbound leg. */
function outboundTracks(ground: Ground, { turns, sense }: Reading): number[] {
  return turns.flatMap((turn, i) => {
    const next = turns[i + 1];
    return i > 0 && i % 2 === sense.first && next
      ? [trackBetween(ground, { from: turn.end, to: next.start })]
      : [];
  });
}

/** A turn over the fix too small to stand in the row, from the arrival to the heading before the next turn. */
function smallTurn(
  ground: Ground,
  start: UtcMillis,
  arrival: number,
  next: TurnEdges,
  side: 1 | -1,
): TurnEdges {
  const toGo = (t: UtcMillis) => side * (next.before - ground.headingAt(t));
  let end = start;
  while (end < next.start && toGo(end) > ROLLED_OUT) {
    const turns = toGo(end) - toGo(end + 3000) > STILL_TURNING;
    if (!turns && end > start + STARTS_MS) break;
    end += 1000;
  }
  return { start, end, before: arrival, after: next.before };
}

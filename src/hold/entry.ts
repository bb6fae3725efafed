/** How the hold was entered, from what was flown between the first pass over the fix and the first lap. */
import { direction } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { UtcMillis } from "../quantity/units.ts";
import type { FixAndCourse } from "./fix-and-course.ts";
import type { HoldEntry } from "./found.ts";
import type { Ground } from "./ground.ts";
import { nearest, type Reading } from "./reading.ts";
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
/** A small turn over the fix begins an outbound leg that is looked for so far back, s, and passes the fix within so many seconds of flight. Tuned. */
const SMALL_TURN_BACK: readonly [number, number] = [25, 450];
const OVER_SECONDS = 10;
/** A small turn is over within this of the outbound heading, degrees. Chosen: that wanders. */
const ROLLED_OUT = 6;
/** A log that begins less than this before the first turn shows no entry, s. Chosen. */
const SEEN_SECONDS = 20;
/** The turn over the fix in a teardrop is smaller than this, degrees: from 110 off the course to 150. Chosen, with room for wind. */
const TEARDROP_TURN = 85;

export function entryOf(ground: Ground, side: 1 | -1, reading: Reading, known: FixAndCourse): Entered {
  const { turns } = reading;
  const [begin] = ground.times;
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const off = (heading: number) => direction(side * (heading - known.course));
  const first = turns[0]!;

  if (reading.sense.first === 0) {
    if (reading.before) return { entry: "parallel", start: reading.before.time, turns };
    if (first.start - begin < SEEN_SECONDS * 1000) return { entry: null, start: first.start, turns };
    const turn = side * (first.after - first.before);
    if (turn < TEARDROP_TURN && off(first.before) > DIRECT_UP_TO && off(first.before) < 200)
      return { entry: "teardrop", start: first.start, turns: turns.slice(2) };
    return { entry: "direct", start: first.start, turns };
  }

  // the row begins with a turn inbound: what was flown before it?
  const back = nearest(
    ground,
    known.fix,
    first.start - SMALL_TURN_BACK[1] * 1000,
    first.start - SMALL_TURN_BACK[0] * 1000,
  );
  if (back && back.distance < OVER_SECONDS * metres && back.time - begin > SEEN_SECONDS * 1000) {
    const arrival = ground.headingAt(back.time - 5000);
    const turned = side * (first.before - arrival);
    if (off(arrival) <= DIRECT_UP_TO && turned > 0) {
      const small = smallTurn(ground, back.time, arrival, first, side);
      return { entry: "direct", start: back.time, turns: [small, ...turns] };
    }
    return { entry: "teardrop", start: back.time, turns: turns.slice(1) };
  }
  const start = turns[1]!.start;
  const seen = first.start - begin >= SEEN_SECONDS * 1000;
  return { entry: seen ? "direct" : null, start, turns: turns.slice(1) };
}

/** A turn over the fix too small to stand in the row, from the arrival to the heading before the next turn. */
function smallTurn(
  ground: Ground,
  start: UtcMillis,
  arrival: number,
  next: TurnEdges,
  side: 1 | -1,
): TurnEdges {
  let end = start;
  while (end < next.start && side * (next.before - ground.headingAt(end)) > ROLLED_OUT) end += 1000;
  return { start, end, before: arrival, after: next.before };
}

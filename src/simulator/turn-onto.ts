/** The turn from a cut onto a course, flown once and not looked at until it is over: in time or not, onto the heading or off it. */
import { sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { AngleSize, Metres, Seconds, TrueDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection } from "./aircraft.ts";
import type { Note } from "./habits.ts";
import { type Drawn, draw, type Random } from "./random.ts";
import type { Sight } from "./sight.ts";

export interface TurnOnto {
  /** Begun so long after the moment from which it would end on the course, seconds; negative: before. */
  readonly late: Drawn;
  /** Rolled out so many degrees right of the heading that holds the course. */
  readonly off: Drawn;
  /** The other way as often as not. */
  readonly eitherSide: boolean;
  /** Left so for so long after the roll-out, seconds. */
  readonly heldFor: Drawn;
}

/** Rolled out when the heading is so near, degrees. */
const ROLLED_OUT: AngleSize = 3;

/** Of the roll into a turn, seconds: as of every pilot here. */
export const ROLL_LAG: Seconds = 2.5;

/** A turn is over by then, however the heading wanders. A cut of 45 degrees takes 18 s at standard rate. */
const LONGEST_TURN: Seconds = 30;

/** Toward the course from the roll-out of the cut on, through still air: a circle, and the roll into it. */
function displaced(a: Aircraft, turn: AngleSize, rollLag: Seconds): Metres {
  const speed = a.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const radius = speed / (a.turnRateWanted * RADIANS_PER_DEGREE);
  return radius * (1 - Math.cos(turn * RADIANS_PER_DEGREE)) + speed * sinDeg(turn) * rollLag;
}

/** The heading to aim at (true), or null once the pilot looks again. */
export function turningOnto(
  joined: TurnOnto,
  cut: AngleSize,
  random: Random,
  note: Note,
): (a: Aircraft, sight: Sight) => TrueDegrees | null {
  const late = draw(joined.late, random);
  const size = draw(joined.off, random);
  const off = joined.eitherSide && random.uniform() < 0.5 ? -size : size;
  const heldFor = draw(joined.heldFor, random);
  let side = 0;
  let phase: "cutting" | "turning" | "held" = "cutting";
  let since: Seconds = 0;
  return (a, sight) => {
    if (side === 0) side = Math.sign(sight.across) || 1;
    const track = sight.course - side * cut;
    if (phase === "cutting") {
      const closing = a.trueAirspeed * METRES_PER_SECOND_PER_KNOT * sinDeg(cut);
      if (side * sight.across > displaced(a, cut, ROLL_LAG) - closing * late)
        return track + neededCorrection(a, track);
      phase = "turning";
      since = a.time;
      note("turned-onto");
    }
    const wanted = sight.course + neededCorrection(a, sight.course) + off;
    const turned = Math.abs(turnFrom(wanted, a.heading)) < ROLLED_OUT || a.time - since > LONGEST_TURN;
    if (phase === "turning" && turned) {
      phase = "held";
      since = a.time;
      note("rolled-out");
    }
    return phase === "held" && a.time - since >= heldFor ? null : wanted;
  };
}

/**
 * How early a turn onto an arc or off it has to begin so that it ends where it should.
 *
 * All angles are counted in a frame at the station: 0 outward along a radial, growing the way the arc goes round,
 * whichever side that is. In it every arc turns right.
 *
 * Method: the turn through the air is a circle (`turned`), the wind moves it along; where it must end is known, so
 * where it begins follows by a few rounds of substitution. In still air this is the geometry of two touching circles:
 * from the arc in to a radial, sin(lead) = r / (R - r); outward, sin(lead) = r / (R + r).
 */
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type {
  AngleSize,
  DegreesPerSecond,
  Knots,
  NauticalMiles,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import { headingForCourse, type InFrame, secondsToTurn, turned, windOfAir } from "../wind/index.ts";

/** The turn as it is flown through the air. */
export interface TurnThroughAir {
  /** Size of the rate. */
  readonly rate: DegreesPerSecond;
  readonly trueAirspeed: Knots;
  /** Air over the ground: outward along the radial of the frame, and the way of the arc. */
  readonly air: InFrame;
}

const ROUNDS = 12;

/**
 * TurnDegrees of the arc before the radial at its end at which the turn off it begins; the frame's radial is that one.
 * Null where the wind leaves no such turn.
 */
export function leadOffArc(
  radius: NauticalMiles,
  to: "inbound" | "outbound",
  turn: TurnThroughAir,
): AngleSize | null {
  const after = headingOn(to === "inbound" ? 180 : 0, turn);
  if (after === null) return null;
  const side = to === "inbound" ? 1 : -1;
  let lead = 0;
  for (let k = 0; k < ROUNDS; k++) {
    const before = headingOn(90 - lead, turn);
    if (before === null) return null;
    const way = flownBy(before, after, side, turn);
    const sine = way.across / radius;
    if (!(Math.abs(sine) < 1)) return null;
    lead = Math.asin(sine) * DEGREES_PER_RADIAN;
  }
  return lead;
}

/**
 * How far before the radius the turn onto the arc begins, along the track flown to it, NM; the frame's radial is that
 * on which it began. `track` is counted in the frame: 0 outward, 180 inward. Null where the track does not lead to the
 * arc, or the wind leaves no such turn.
 */
export function leadOntoArc(
  radius: NauticalMiles,
  track: TurnDegrees,
  turn: TurnThroughAir,
): NauticalMiles | null {
  const before = headingOn(track, turn);
  const closing = cosDeg(track);
  if (before === null || Math.abs(closing) < 0.2) return null;
  const side = Math.sign(turnFrom(track, 90));
  let end = 0; // the radial on which the turn is over
  let start = radius;
  for (let k = 0; k < ROUNDS; k++) {
    const after = headingOn(end + 90, turn);
    if (after === null) return null;
    const way = flownBy(before, after, side, turn);
    if (!(Math.abs(way.across) < radius)) return null;
    start = Math.sqrt(radius * radius - way.across * way.across) - way.along;
    end = Math.atan2(way.across, start + way.along) * DEGREES_PER_RADIAN;
  }
  return (radius - start) / closing;
}

/** The heading that flies a track in the frame. */
function headingOn(track: TurnDegrees, { trueAirspeed, air }: TurnThroughAir): TurnDegrees | null {
  const solved = headingForCourse(direction(track), trueAirspeed, windOfAir(air.across, air.along));
  return solved && track + solved.correction;
}

function flownBy(
  from: TurnDegrees,
  to: TurnDegrees,
  side: number,
  { rate, trueAirspeed, air }: TurnThroughAir,
): InFrame {
  const signed = side * rate;
  return turned(from, signed, secondsToTurn(from, to, signed), trueAirspeed, air);
}

/** Components of a velocity of the air in the frame of a radial. */
export const inFrame = (east: Knots, north: Knots, radial: TrueDegrees, side: 1 | -1): InFrame => ({
  along: east * sinDeg(radial) + north * cosDeg(radial),
  across: side * (east * cosDeg(radial) - north * sinDeg(radial)),
});

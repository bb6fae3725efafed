/** An approach as a pilot flies it: onto the final, down it by a path or by steps, and to a landing or a climb away. */
import { direction, tanDeg, turnFrom } from "../quantity/angle.ts";
import {
  DEGREES_PER_RADIAN,
  METRES_PER_FOOT,
  METRES_PER_NAUTICAL_MILE,
  METRES_PER_SECOND_PER_KNOT,
} from "../quantity/factor.ts";
import type {
  Feet,
  FeetPerMinute,
  Knots,
  NauticalMiles,
  Seconds,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import { type Aircraft, neededCorrection, STEP, unwrap } from "./aircraft.ts";
import type { ApproachStep } from "./approach-step.ts";
import { ApproachNotes, type FlownApproach } from "./flown-approach.ts";
import { gaussMarkov } from "./gauss-markov.ts";
import { joining, type Moment, type Steersman, steersman } from "./habits.ts";
import { draw, type Random } from "./random.ts";
import { roundToFinal } from "./round-to-final.ts";
import { type Sight, sightOf } from "./sight.ts";
import { turningOnto } from "./turn-onto.ts";

/** Mean radius of the earth, m: the curve that a straight beam rises over, by the parabola. */
const EARTH = 6_371_000;
/** The vertical needle is flown back in so many seconds, with a wander of the rate aimed at. Tuned to look hand-flown. */
const PATH_TIME: Seconds = 12;
const RATE_WANDER = { sd: 60, time: 15 };
/** A flare from this height, at this rate. Common practice, no source. */
const FLARE: Feet = 20;
const TOUCH_RATE: FeetPerMinute = 180;
/** The roll is logged for so long. */
const ROLL: Seconds = 50;
/** Straight ahead after the climb began. */
const AHEAD: Seconds = 70;
/** Near the threshold a pilot holds what was held. */
const NEEDLE_ALONE: NauticalMiles = 0.25;

/** Height over the threshold of a straight path, so far before it. */
function heightOnBeam(angle: number, crossing: Feet, distance: NauticalMiles): Feet {
  const metres = distance * METRES_PER_NAUTICAL_MILE;
  return crossing + (metres * tanDeg(angle) + (metres * metres) / (2 * EARTH)) / METRES_PER_FOOT;
}

/** Yields the heading to aim at, until the approach has ended. */
export function* flyApproach(
  step: ApproachStep,
  a: Aircraft,
  chances: { readonly script: Random; readonly pilot: Random },
  done: (approach: FlownApproach) => void,
): Generator<TurnDegrees, void> {
  const { runway, descent, localizer } = step;
  const look = sightOf({ form: "to", fix: runway.threshold, course: runway.course, scale: "rnav-1" });
  const wander = gaussMarkov(RATE_WANDER, STEP, chances.pilot);
  const late = draw(step.join.late, chances.script);
  const off = descent.by === "path" ? draw(descent.off, chances.script) : 0;
  const ends = step.ends;
  const missedAt = "at" in ends ? draw(ends.at, chances.script) : null;
  const below = "below" in ends ? draw(ends.below, chances.script) : null;
  const finalSpeed = draw(step.speed, chances.script);
  const notes = new ApproachNotes(step, a);
  let steer: Steersman | null = null;
  let held: TrueDegrees | null = null;

  /** Looks at the final and notes what was passed. */
  function see(): Sight {
    const plain = look(a.position, a.time);
    const angle = Math.atan2(plain.across, (plain.distance + localizer.antenna) * METRES_PER_NAUTICAL_MILE);
    const sight = { ...plain, needle: (angle * DEGREES_PER_RADIAN) / localizer.half };
    notes.passed(sight.distance);
    return sight;
  }
  const momentOf = (sight: Sight): Moment => ({
    sight,
    speed: a.trueAirspeed * METRES_PER_SECOND_PER_KNOT,
    needed: neededCorrection(a, sight.course),
  });
  const groundSpeed = (sight: Sight): Knots =>
    a.trueAirspeed * Math.cos((momentOf(sight).needed * Math.PI) / 180) +
    a.air.steadyEast * Math.sin((sight.course * Math.PI) / 180) +
    a.air.steadyNorth * Math.cos((sight.course * Math.PI) / 180);
  /** Notes how the final is joined; how much is left to turn. */
  function join(sight: Sight): TurnDegrees {
    const toTurn = Math.abs(turnFrom(sight.course + momentOf(sight).needed, a.heading));
    notes.joins(sight, toTurn);
    return toTurn;
  }

  a.verticalWanted = null;
  a.altitudeWanted = step.fixAltitude;
  a.climbRate = 500;
  if (step.join.arc) yield* roundToFinal(step.join.arc, a, see);
  else {
    // straight on the heading that cuts the final, until past it by so much (or so near to it)
    const first = see();
    const side = Math.sign(first.across);
    notes.side = side;
    const cut = direction(runway.course - side * step.join.cut);
    const heading = cut + neededCorrection(a, cut);
    notes.interceptDeg = -side * step.join.cut;
    if (step.join.turn) {
      const onto = turningOnto(step.join.turn, step.join.cut, chances.pilot, notes.note);
      for (let s = first; ; s = see()) {
        const wanted = onto(a, s);
        if (wanted === null) break;
        join(s);
        yield unwrap(a.heading, wanted);
      }
      steer = steersman(step.flown, a.time, chances.pilot, notes.note);
    } else for (let s = first; s.across * side > -late; s = see()) yield unwrap(a.heading, heading);
  }

  let phase: "level" | "down" | "flare" = "level";
  for (;;) {
    const sight = see();
    const m = momentOf(sight);
    notes.follows(sight, join(sight));
    if (!steer && notes.established !== null)
      steer = steersman(step.flown, a.time, chances.pilot, notes.note);
    if (sight.distance > NEEDLE_ALONE || held === null)
      held = steer ? steer(m) : joining(m, Math.max(30, step.join.cut));

    // the way down
    const height = a.altitude - runway.elevation;
    if (descent.by === "path") {
      const above = descent.beyond === undefined || sight.distance > descent.beyond ? off : 0;
      const aim = heightOnBeam(descent.angle + above, descent.crossing, sight.distance);
      if (phase === "level" && height >= aim) phase = "down";
      const down = -groundSpeed(sight) * 101.27 * tanDeg(descent.angle + above);
      if (phase === "down")
        a.verticalWanted = Math.max(-1800, Math.min(0, down + ((aim - height) / PATH_TIME) * 60 + wander()));
    } else {
      const now = descent.steps.filter((s) => sight.distance <= s.from).at(-1);
      if (now) {
        a.altitudeWanted = now.altitude;
        a.climbRate = descent.rate;
      }
      if (ends.by === "landing" && sight.distance < (step.minimum - runway.elevation - 50) / 318.4) {
        const aim = heightOnBeam(3, 50, sight.distance);
        const down = -groundSpeed(sight) * 101.27 * tanDeg(3);
        a.verticalWanted = Math.min(0, down + ((aim - height) / PATH_TIME) * 60 + wander());
      }
    }
    if (notes.fix !== null)
      a.airspeed.set(step.unsteady && sight.distance < step.unsteady.at ? step.unsteady.share : finalSpeed);

    if (ends.by === "missed") {
      const low = below !== null && notes.fix !== null && a.altitude <= step.minimum - below;
      if (low || (missedAt !== null && sight.distance <= missedAt)) break;
    } else if (height < FLARE) {
      phase = "flare";
      a.verticalWanted = -TOUCH_RATE;
      held = sight.course + m.needed;
      if (height <= 1) break;
    }
    if (sight.distance < -3) throw new RangeError(`invalid approach: ${step.exercise} does not end`);
    yield unwrap(a.heading, held);
  }

  if (ends.by === "missed") {
    notes.missed = a.time;
    a.verticalWanted = null;
    a.altitudeWanted = step.climb.altitude;
    a.climbRate = step.climb.rate;
    a.airspeed.set(finalSpeed);
    for (const until = a.time + AHEAD; a.time < until; ) {
      const m = momentOf(see());
      yield unwrap(a.heading, steer ? steer(m) : m.sight.course + m.needed);
    }
  } else {
    a.rolling = { course: runway.course, elevation: runway.elevation, speed: groundSpeed(see()) };
    for (const until = a.time + ROLL; a.time < until; see()) yield a.heading;
  }
  done(notes.done());
}

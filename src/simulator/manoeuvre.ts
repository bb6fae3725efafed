/** Each step of a script as steering: the heading to aim at now, or the end of the step. */
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE, METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Seconds, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import { flyApproach } from "./approach.ts";
import { type FlownArc, flyArc } from "./arc.ts";
import { type FlownDescent, flyDescent } from "./descent.ts";
import type { FlownApproach } from "./flown-approach.ts";
import { joining, type Moment, type Note, type Steersman, steersman } from "./habits.ts";
import { type FlownHold, flyHold } from "./hold.ts";
import { draw, type Random } from "./random.ts";
import type { CourseStep, Step } from "./script.ts";
import { type Sight, sightOf } from "./sight.ts";
import { offset } from "./step.ts";
import { turningOnto } from "./turn-onto.ts";

/** Heading to aim at (not wrapped), or null when the step is done. */
export type Manoeuvre = (a: Aircraft) => TurnDegrees | null;

/** What a course step tells the truth as it is flown. */
export interface Witness {
  readonly saw: (sight: Sight) => void;
  readonly note: Note;
  readonly held: (hold: FlownHold) => void;
  readonly rounded: (arc: FlownArc) => void;
  readonly descended: (descent: FlownDescent) => void;
  readonly approached: (approach: FlownApproach) => void;
}

/** A step is rolled out when the heading is so near, degrees. */
const ROLLED_OUT = 3;
/** Established: this near to the course and this parallel to it. */
const ESTABLISHED_M = 150;
const ESTABLISHED_DEG = 8;

/** A step that is flown as it stands. */
export type PlainStep = Exclude<Step, { readonly do: "drawn" }>;

/** Chances of the script's own drawn values, and of the pilot: apart, so that neither shifts the other. */
export interface Chances {
  readonly script: Random;
  readonly pilot: Random;
}

export function manoeuvre(step: PlainStep, a: Aircraft, chances: Chances, witness: Witness): Manoeuvre {
  switch (step.do) {
    case "height":
      a.altitudeWanted = step.altitude;
      a.climbRate = step.rate;
      return () => null;
    case "speed":
      a.airspeed.set(draw(step.share, chances.script));
      return () => null;
    case "rate":
      a.turnRateWanted = draw(step.rate, chances.script);
      return () => null;
    case "heading":
      return holdHeading(
        step.heading === undefined ? a.heading : unwrap(a.heading, step.heading, step.turn),
        draw(step.seconds, chances.script),
      );
    case "turn":
      return holdHeading(a.heading + draw(step.by, chances.script), 0);
    case "direct": {
      let side = step.turn;
      return (now) => {
        const { distance, azimuthAtStart } = offset(now.position, step.to);
        if (distance < step.within * METRES_PER_NAUTICAL_MILE) return null;
        const wanted = azimuthAtStart + neededCorrection(now, azimuthAtStart);
        if (Math.abs(turnFrom(now.heading, wanted)) < 90) side = undefined;
        return unwrap(now.heading, wanted, side);
      };
    }
    case "course":
      return flyCourse(step, chances.pilot, witness);
    case "approach": {
      const approach = flyApproach(step, a, chances, witness.approached);
      return () => approach.next().value ?? null;
    }
    case "hold": {
      const hold = flyHold(step, a, chances.pilot, witness.held);
      return () => hold.next().value ?? null;
    }
    case "arc": {
      const arc = flyArc(step, a, witness.rounded);
      return () => arc.next().value ?? null;
    }
    case "descent": {
      const descent = flyDescent(step, a, witness.descended);
      return () => descent.next().value ?? null;
    }
  }
}

function holdHeading(heading: TurnDegrees, seconds: Seconds): Manoeuvre {
  let since: Seconds | null = null;
  return (a) => {
    if (since === null && Math.abs(heading - a.heading) < ROLLED_OUT) since = a.time;
    return since !== null && a.time - since >= seconds ? null : heading;
  };
}

function flyCourse(step: CourseStep, random: Random, witness: Witness): Manoeuvre {
  const look = sightOf(step);
  let steer: Steersman | null = null;
  let wanted: TrueDegrees | null = null;
  const onto = step.joined && turningOnto(step.joined, step.cut, random, witness.note);
  let turning = onto !== undefined;
  return (a) => {
    const sight = look(a.position, a.time);
    const done = step.form === "from" ? sight.distance >= step.until : sight.distance <= step.until;
    if (done) return null;
    if (turning && onto) {
      const heading = onto(a, sight);
      if (heading !== null) return unwrap(a.heading, heading);
      turning = false;
      witness.note("established");
      steer = steersman(step.flown, a.time, random, witness.note);
    }
    const m: Moment = {
      sight,
      speed: a.trueAirspeed * METRES_PER_SECOND_PER_KNOT,
      needed: neededCorrection(a, sight.course),
    };
    const parallel = Math.abs(turnFrom(sight.course + m.needed, a.heading)) < ESTABLISHED_DEG;
    if (!steer && Math.abs(sight.across) < ESTABLISHED_M && parallel) {
      witness.note("established");
      steer = steersman(step.flown, a.time, random, witness.note);
    }
    if (steer) witness.saw(sight);
    if (sight.needleWatched) wanted = steer ? steer(m) : joining(m, step.cut);
    // beside the station: the heading that was held inbound, or the one that should hold outbound
    else if (wanted === null || step.form === "from") wanted = sight.course + m.needed;
    return unwrap(a.heading, wanted);
  };
}

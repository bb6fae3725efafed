/** An arc as a pilot flies it: onto it, round the station at a distance, and off it onto a radial. */
import { direction, turnFrom } from "../quantity/angle.ts";
import {
  DEGREES_PER_RADIAN,
  METRES_PER_NAUTICAL_MILE,
  METRES_PER_SECOND_PER_KNOT,
} from "../quantity/factor.ts";
import type {
  AngleSize,
  Metres,
  NauticalMiles,
  Seconds,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import type { ArcStep } from "./script.ts";
import { sightOf } from "./sight.ts";
import { offset } from "./step.ts";

/** What a pilot sees of the arc. */
export interface ArcSight {
  readonly time: Seconds;
  readonly distance: Metres;
  /** True azimuth at the station. */
  readonly radial: TrueDegrees;
  /** The direction of the arc where the aircraft is. */
  readonly tangent: TrueDegrees;
}

export interface FlownArc {
  readonly step: ArcStep;
  readonly start: Seconds;
  readonly joined: Seconds | null;
  readonly turnOff: Seconds;
  readonly end: Seconds;
  readonly turnOffRadial: TrueDegrees;
  /** At the end, right of the course along the radial positive. */
  readonly rollOutAcross: NauticalMiles;
  /** From joining to the turn off, one a time step of the flight. */
  readonly sights: readonly ArcSight[];
}

/** Joined: so near to the radius and so parallel to it. */
const JOINED: Metres = 450;
const JOINED_DEG = 15;
/** Time constants of the return to the arc, seconds: joining it, and keeping it. Tuned to look like a calm pilot. */
const JOINING = 15;
const KEEPING = 30;
const ROLLED_OUT = 3;

/** Yields the heading to aim at, until the aircraft is rolled out on the radial at the end. */
export function* flyArc(
  step: ArcStep,
  a: Aircraft,
  done: (arc: FlownArc) => void,
): Generator<TurnDegrees, void> {
  const { station, turns, flown, toRadial } = step;
  const right = turns === "right" ? 1 : -1;
  const radius = step.radius * METRES_PER_NAUTICAL_MILE;
  const start = a.time;
  const sights: ArcSight[] = [];
  let joined: Seconds | null = null;
  let phase: "held" | "cutting" | "tidy" = flown.habit === "waits" ? "held" : "tidy";
  let piece: { readonly until: number; readonly ahead: TrueDegrees } | null = null;

  const look = (): ArcSight => {
    const { distance, azimuthAtStart, azimuthAtEnd } = offset(station, a.position);
    const tangent = direction(azimuthAtEnd + right * 90);
    return { time: a.time, distance, radial: azimuthAtStart, tangent };
  };
  /** Still to go round, degrees. */
  const left = (radial: TrueDegrees): number => {
    const whole = direction(right * (toRadial - step.fromRadial));
    const gone = direction(right * (radial - step.fromRadial));
    return whole - (gone > (360 + whole) / 2 ? gone - 360 : gone);
  };
  /** Toward the station positive. */
  const cut = (off: Metres, time: Seconds, most: AngleSize): number => {
    const speed = a.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
    return Math.max(-most, Math.min(most, Math.atan(off / (speed * time)) * DEGREES_PER_RADIAN));
  };

  for (;;) {
    const sight = look();
    const off = sight.distance - radius;
    const toGo = left(sight.radial);
    if (toGo <= step.lead) break;
    if (joined === null) {
      const parallel = Math.abs(turnFrom(sight.tangent, a.heading)) < JOINED_DEG + 15;
      if (Math.abs(off) < JOINED && parallel) joined = a.time;
    }
    if (joined === null) {
      const toward = sight.tangent + right * cut(off, JOINING, 60);
      yield unwrap(a.heading, toward + neededCorrection(a, toward));
      continue;
    }
    sights.push(sight);
    if (flown.habit === "waits") {
      if (phase === "held" && Math.abs(off) >= flown.correctsAt * METRES_PER_NAUTICAL_MILE) phase = "cutting";
      else if (phase === "cutting" && Math.abs(off) < 200) phase = "tidy";
    }
    const share = flown.habit === "waits" ? (phase === "held" ? flown.share : flown.thenShare) : flown.share;
    let course = sight.tangent;
    if (step.pieces !== undefined) {
      if (piece === null || toGo <= piece.until)
        piece = { until: toGo - step.pieces, ahead: sight.tangent + (right * step.pieces) / 2 };
      course = piece.ahead;
    }
    const toward =
      phase === "held"
        ? 0
        : phase === "cutting" && flown.habit === "waits"
          ? cut(off, 3, flown.cut)
          : cut(off, KEEPING, 15);
    yield unwrap(a.heading, course + share * neededCorrection(a, course) + right * toward);
  }

  const turnOff = a.time;
  const turnOffRadial = look().radial;
  const inbound = step.leaves === "inbound";
  const course = inbound ? direction(toRadial + 180) : toRadial;
  const across = sightOf({ form: inbound ? "to" : "from", fix: station, course, scale: "vor" });
  const wanted = () => course + neededCorrection(a, course);
  const side = inbound ? turns : turns === "right" ? "left" : "right";
  let heading = unwrap(a.heading, wanted(), side);
  while (Math.abs(heading - a.heading) > ROLLED_OUT) {
    yield heading;
    heading = unwrap(a.heading, wanted(), Math.abs(heading - a.heading) > 60 ? side : undefined);
  }
  done({
    step,
    start,
    joined,
    turnOff,
    end: a.time,
    turnOffRadial,
    rollOutAcross: across(a.position, a.time).across / METRES_PER_NAUTICAL_MILE,
    sights,
  });
}

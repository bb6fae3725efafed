/** The flying aircraft: it turns toward a heading, climbs toward a height and is carried by the air. */
import type { Position } from "../geodesy/position.ts";
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type {
  DegreesPerSecond,
  FeetMsl,
  FeetPerMinute,
  Knots,
  Seconds,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import { type Air, windField } from "./air.ts";
import { type Airspeed, airspeed } from "./airspeed.ts";
import { gaussMarkov } from "./gauss-markov.ts";
import { randomStream } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { Side } from "./script.ts";
import { stepOver } from "./step.ts";

/** Time step of the flight, seconds. In a turn at 3 degrees per second its chord is 0.01 % short. */
export const STEP: Seconds = 0.5;

/** Seconds in which a heading error would be taken out; with 2.5 s of roll lag a turn ends without overshoot. Tuned. */
const ROLL_OUT = 5;
/** Height is flown back in so many seconds, and climbs begin so softly. Tuned to look hand-flown. */
const HEIGHT_TIME = 15;
const PITCH_LAG = 4;
/** A turn by less is a correction and not rolled out late; one is rolled out when its heading is so near, degrees. */
const LARGE_TURN = 30;
const ROLLED_OUT_LATE = 3;
/** Wander of the height aimed at, feet over seconds. Tuned to stay within 100 ft. */
const HEIGHT_WANDER = { sd: 20, time: 60 };

export interface Aircraft {
  time: Seconds;
  position: Position;
  altitude: FeetMsl;
  verticalSpeed: FeetPerMinute;
  /** Not wrapped at 360, so that turns can be counted. */
  heading: TurnDegrees;
  turnRate: DegreesPerSecond;
  trueAirspeed: Knots;
  air: Air;
  /** Aimed at. */
  altitudeWanted: FeetMsl;
  climbRate: FeetPerMinute;
  /** In turns; each strays from it a little. */
  turnRateWanted: DegreesPerSecond;
  /** A vertical speed aimed at instead of a height; null: the height. */
  verticalWanted: FeetPerMinute | null;
  /** On the runway: its direction, elevation and the speed over the ground; null in the air. */
  rolling: { readonly course: TrueDegrees; readonly elevation: FeetMsl; speed: Knots } | null;
  readonly airspeed: Airspeed;
  /** One step on, toward a heading (not wrapped). */
  advance(heading: TurnDegrees): void;
}

/** Brakes and drag on the runway, knots a second, down to a walk off it. Common practice, no source. */
const BRAKING = 4;
const WALK: Knots = 6;

/** One step on the ground: straight along the runway, slower and slower. */
function roll(a: Aircraft, on: NonNullable<Aircraft["rolling"]>): void {
  const before = on.speed;
  on.speed = Math.max(WALK, on.speed - BRAKING * STEP);
  const way = ((before + on.speed) / 2) * METRES_PER_SECOND_PER_KNOT * STEP;
  a.heading = unwrap(a.heading, on.course);
  a.turnRate = 0;
  a.altitude = on.elevation;
  a.verticalSpeed = 0;
  a.position = stepOver(a.position, way * sinDeg(on.course), way * cosDeg(on.course));
  a.trueAirspeed = Math.hypot(
    on.speed * sinDeg(on.course) - a.air.east,
    on.speed * cosDeg(on.course) - a.air.north,
  );
  a.time += STEP;
}

/** The heading to aim at, counted on from the present one: by the shorter way, or by the side named. */
export function unwrap(present: TurnDegrees, wanted: TrueDegrees, side?: Side): TurnDegrees {
  if (side === "right") return present + direction(wanted - present);
  if (side === "left") return present - direction(present - wanted);
  return present + turnFrom(present, wanted);
}

/** Wind correction that a course needs in the steady wind, degrees, right positive. */
export function neededCorrection(a: Aircraft, course: TrueDegrees): TurnDegrees {
  const fromLeft = a.air.steadyEast * cosDeg(course) - a.air.steadyNorth * sinDeg(course);
  const share = -fromLeft / a.trueAirspeed;
  if (!(Math.abs(share) < 1)) throw new RangeError(`invalid wind for airspeed: ${share}`);
  return Math.asin(share) * DEGREES_PER_RADIAN;
}

export function newAircraft({ start, wind, airspeed: speed, pilot }: Scenario, seed: number): Aircraft {
  const turns = randomStream(seed, "turns");
  const blow = windField(wind, STEP, randomStream(seed, "wind"));
  const headingWander = gaussMarkov(pilot.heading, STEP, randomStream(seed, "heading"));
  const heightWander = gaussMarkov(HEIGHT_WANDER, STEP, randomStream(seed, "height"));
  const fast = airspeed(speed, start.altitude, STEP, randomStream(seed, "airspeed"));
  const rollShare = 1 - Math.exp(-STEP / pilot.rollLag);
  const pitchShare = 1 - Math.exp(-STEP / PITCH_LAG);
  let turning = false;
  /** Past the heading wanted, the turn that is being flown goes on for so many degrees, right positive. */
  let late: TurnDegrees = 0;
  let rate = pilot.turnRate;

  const velocity = (heading: TurnDegrees, v: Knots, air: Air) => ({
    east: (v * sinDeg(heading) + air.east) * METRES_PER_SECOND_PER_KNOT,
    north: (v * cosDeg(heading) + air.north) * METRES_PER_SECOND_PER_KNOT,
  });

  const aircraft: Aircraft = {
    time: 0,
    position: start.position,
    altitude: start.altitude,
    verticalSpeed: 0,
    heading: unwrap(0, start.heading, "right"),
    turnRate: 0,
    trueAirspeed: fast.next(start.altitude, 0),
    air: blow(start.altitude),
    altitudeWanted: start.altitude,
    climbRate: 500,
    turnRateWanted: pilot.turnRate,
    verticalWanted: null,
    rolling: null,
    airspeed: fast,
    advance(wanted) {
      if (aircraft.rolling) {
        roll(aircraft, aircraft.rolling);
        aircraft.air = blow(aircraft.altitude);
        return;
      }
      const before = velocity(aircraft.heading, aircraft.trueAirspeed, aircraft.air);
      const toGo = wanted + headingWander() - aircraft.heading;
      if (Math.abs(toGo) > 10 && !turning) {
        rate = aircraft.turnRateWanted * (1 + pilot.turnRateSpread * turns.normal());
        late = toGo < -LARGE_TURN ? -(pilot.lateToLeft ?? 0) : 0;
      }
      if (late !== 0 && toGo + late > -ROLLED_OUT_LATE) late = 0;
      const error = toGo + late;
      turning = Math.abs(error) > (turning ? 3 : 10);
      const rateWanted = Math.max(-rate, Math.min(rate, error / ROLL_OUT));
      const rateBefore = aircraft.turnRate;
      aircraft.turnRate += (rateWanted - rateBefore) * rollShare;
      aircraft.heading += ((rateBefore + aircraft.turnRate) / 2) * STEP;

      const off = aircraft.altitudeWanted + heightWander() - aircraft.altitude;
      const most = aircraft.climbRate;
      const climb = aircraft.verticalWanted ?? Math.max(-most, Math.min(most, (off / HEIGHT_TIME) * 60));
      const climbBefore = aircraft.verticalSpeed;
      aircraft.verticalSpeed += (climb - climbBefore) * pitchShare;
      aircraft.altitude += ((climbBefore + aircraft.verticalSpeed) / 2 / 60) * STEP;

      aircraft.trueAirspeed = fast.next(aircraft.altitude, aircraft.turnRate);
      aircraft.air = blow(aircraft.altitude);
      const after = velocity(aircraft.heading, aircraft.trueAirspeed, aircraft.air);
      const east = ((before.east + after.east) / 2) * STEP;
      const north = ((before.north + after.north) / 2) * STEP;
      aircraft.position = stepOver(aircraft.position, east, north);
      aircraft.time += STEP;
    },
  };
  return aircraft;
}

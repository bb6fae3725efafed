/** A descent to a height before a fix as a pilot flies it: begun in time, early or late, at a rate. */
import { cosDeg, direction, sinDeg } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { FeetMsl, NauticalMiles, Seconds, TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import { rounded } from "./means.ts";
import type { DescentStep } from "./script.ts";
import { offset } from "./step.ts";
import type { TrueDescent } from "./truth.ts";

export interface FlownDescent {
  readonly step: DescentStep;
  readonly began: { readonly time: Seconds; readonly altitude: FeetMsl; readonly toGo: NauticalMiles } | null;
  readonly crossing: { readonly time: Seconds; readonly altitude: FeetMsl };
  readonly reached: Seconds | null;
  /** Over the fix. */
  readonly end: Seconds;
}

/** The softness of beginning and end costs a descent about so long, seconds: see the aircraft's pitch and height lags. */
const SOFTNESS: Seconds = 12;
/** Reached from here on. */
const REACHED = 50;

/** Yields the heading to aim at, until the fix is passed. */
export function* flyDescent(
  step: DescentStep,
  a: Aircraft,
  done: (descent: FlownDescent) => void,
): Generator<TurnDegrees, void> {
  const { fix, to, before, rate, levelOff } = step;
  const levelled = { since: null as Seconds | null, over: levelOff === undefined };
  let began: FlownDescent["began"] = null;
  let crossing: FlownDescent["crossing"] | null = null;
  let reached: Seconds | null = null;
  for (let nearest = Number.POSITIVE_INFINITY; ; ) {
    const { distance, azimuthAtStart } = offset(a.position, fix);
    if (distance > nearest && nearest < 1000) break;
    nearest = distance;
    const toGo = distance / METRES_PER_NAUTICAL_MILE - before;
    const along = a.air.steadyEast * sinDeg(azimuthAtStart) + a.air.steadyNorth * cosDeg(azimuthAtStart);
    const correction = neededCorrection(a, azimuthAtStart);
    const seconds = (toGo / (a.trueAirspeed * cosDeg(correction) + along)) * 3600;
    const asked = ((a.altitude - to) / rate) * 60 + SOFTNESS;
    if (!began && seconds <= asked - step.late) {
      began = { time: a.time, altitude: a.altitude, toGo };
      a.altitudeWanted = levelOff ? levelOff.at : to;
      a.climbRate = rate;
    }
    if (began && levelOff && !levelled.over) {
      if (levelled.since === null && a.altitude <= levelOff.at + REACHED) levelled.since = a.time;
      if (levelled.since !== null && a.time - levelled.since >= levelOff.seconds) {
        levelled.over = true;
        a.altitudeWanted = to;
      }
    }
    if (!crossing && toGo <= 0) crossing = { time: a.time, altitude: a.altitude };
    if (began && reached === null && a.altitude <= to + REACHED) reached = a.time;
    yield unwrap(a.heading, distance < 400 ? direction(a.heading) : azimuthAtStart + correction);
  }
  crossing ??= { time: a.time, altitude: a.altitude };
  done({ step, began, crossing, reached, end: a.time });
}

export function trueDescent(flown: FlownDescent, utc: (t: Seconds) => string): TrueDescent {
  const { step, began, crossing, reached, end } = flown;
  return {
    title: step.exercise,
    fix: [step.fix.latitude, step.fix.longitude],
    toFt: step.to,
    beforeNm: step.before,
    rateFpm: step.rate,
    lateS: step.late,
    beganUtc: began && utc(began.time),
    beganAltitudeFt: began && rounded(began.altitude, 0),
    beganToGoNm: began && rounded(began.toGo, 2),
    crossingUtc: utc(crossing.time),
    crossingAltitudeFt: rounded(crossing.altitude, 0),
    reachedUtc: reached === null ? null : utc(reached),
    fixUtc: utc(end),
  };
}

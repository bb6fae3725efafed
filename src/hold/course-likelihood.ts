/**
 * How likely a course through a fix is, from how pilots come to one: an aircraft beside the course is still cutting
 * toward it, the more so the farther off it is, so that place and direction belong together.
 */
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize, Metres, Share, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import type { Place } from "./ground.ts";
import { student } from "./likelihood.ts";

/** A pilot near the course comes back to it with this time constant, s; farther off than so many seconds of flight, at an angle. Tuned. */
const SOFT_SECONDS = 25;
const CUT_BEYOND_SECONDS = 5;
const CUT_FADE_SECONDS = 1;
export const CUT: AngleSize = 27;
const CUT_SD: AngleSize = 6;
/** No pilot cuts like the next: this share of the cut is doubt. Chosen. */
const CUT_DOUBT: Share = 0.3;
/** Inbound legs end so near the course, seconds of flight, when they succeed and when they do not. Tuned. */
const ESTABLISHED_SECONDS = 2;
const MISSED_SECONDS = 12;
const MISSES: Share = 0.2;
/** The turn over the fix begins so near abeam, seconds of flight. Tuned. */
export const ABEAM_SECONDS = 2.5;
/** The track of a leg flown by hand wanders by so many degrees. Tuned. */
const WANDER: AngleSize = 2.2;
const CUT_WANDER: AngleSize = Math.hypot(CUT_SD, WANDER);
/** A pilot turns to the inbound heading first, this often, this well, degrees, or else to anything within so many. Chosen. */
const TURNED_TO: Share = 0.6;
const TURNED_SD: AngleSize = 4;
const TURNED_ELSE: AngleSize = 120;
/** Share of looks on the way from the one to the other, and of those that fit nothing. Chosen. */
const JOINING: Share = 0.2;
const WILD: Share = 0.05;

/** A moment of an inbound leg. */
export interface Look {
  readonly place: Place;
  readonly track: TrueDegrees;
  /** The last of its leg. */
  readonly last: boolean;
}

/** A line that the fix lies near to. */
export interface Sighting {
  readonly place: Place;
  /** Unit vector square to the line. */
  readonly east: number;
  readonly north: number;
  readonly sd: Metres;
}

export interface Evidence {
  readonly looks: readonly Look[];
  /** Where turns over the fix began after an inbound leg: abeam the fix, whatever the side. */
  readonly abeam: readonly Place[];
  readonly sightings: readonly Sighting[];
  /** How far the turns inbound went, degrees: to the inbound heading, whatever cut followed. */
  readonly farthest: readonly TurnDegrees[];
  readonly headingFor: (course: number) => number;
  /** In one second of flight. */
  readonly metres: Metres;
}

/** Products of so few likelihoods are still numbers: of many, the logs are summed. */
const LEAST = 1e-200;

/** Log likelihood of a course (degrees on the map) through a fix (m east and north), but for a constant. It is asked thousands of times a hold, so nothing is made in it. */
export function courseLikelihood({ looks, abeam, sightings, farthest, headingFor, metres }: Evidence) {
  const lookEast = Float64Array.from(looks, ({ place }) => place.east);
  const lookNorth = Float64Array.from(looks, ({ place }) => place.north);
  const track = Float64Array.from(looks, (look) => look.track);
  const last = Uint8Array.from(looks, (look) => (look.last ? 1 : 0));
  const abeamMetres = ABEAM_SECONDS * metres;

  return (course: number, east: number, north: number): number => {
    const e = sinDeg(course);
    const n = cosDeg(course);
    let sum = 0;
    let product = 1;
    for (let i = 0; i < track.length; i++) {
      const y = ((lookEast[i]! - east) * n - (lookNorth[i]! - north) * e) / metres; // seconds of flight to the right
      const off = turnFrom(course, track[i]!);
      const side = Math.sign(y);
      const soft = Math.atan(y / SOFT_SECONDS) * DEGREES_PER_RADIAN;
      const doubt = CUT_DOUBT * soft;
      const keeps = bell(off + soft, Math.sqrt(WANDER * WANDER + doubt * doubt));
      const cuts = bell(off + side * CUT, CUT_WANDER);
      const share = 1 / (1 + Math.exp((CUT_BEYOND_SECONDS - Math.abs(y)) / CUT_FADE_SECONDS));
      const joins = bell(off + (side * CUT) / 2, CUT / 2);
      const meant = (1 - share) * keeps + share * cuts;
      product *= (1 - JOINING - WILD) * meant + JOINING * joins + WILD / 90;
      if (last[i] === 1)
        product *= (1 - MISSES) * bell(y, ESTABLISHED_SECONDS) + MISSES * student(y, MISSED_SECONDS);
      if (product < LEAST) {
        sum += Math.log(product);
        product = 1;
      }
    }
    if (farthest.length > 0) {
      const heading = headingFor(course);
      for (const h of farthest)
        product *= TURNED_TO * bell(turnFrom(heading, h), TURNED_SD) + (1 - TURNED_TO) / TURNED_ELSE;
    }
    let against = 1;
    for (const p of abeam) against *= tail(((p.east - east) * e + (p.north - north) * n) / abeamMetres);
    for (const s of sightings)
      against *= tail(((s.place.east - east) * s.east + (s.place.north - north) * s.north) / s.sd);
    return sum + Math.log(product) - 2 * Math.log(against);
  };
}

const bell = (x: number, sd: number): number => {
  const z = x / sd;
  return Math.exp(-0.5 * z * z) / (sd * 2.5066);
};
/** One over the root of Student's t of 3 degrees but for a constant. */
const tail = (x: number): number => 1 + (x * x) / 3;

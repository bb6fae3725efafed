/** The runs of the path that may be an arc: near its radius, along its tangent, and turning with it. */
import type { ArcExercise } from "../brief/brief.ts";
import { measureAround } from "../geodesy/index.ts";
import { cosDeg, direction, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Share, TurnDegrees } from "../quantity/units.ts";
import { type Flown, type FlownPath, turnAt } from "./flown.ts";
import { ALIGNED_DEG, BRIDGED_NM, type Run, SHORTEST_NM, TURN_AWAY_DEG, withoutTurns } from "./runs.ts";
import { half } from "./score.ts";

/** Off the radius by so much, an aircraft may still be trying: at most, and as a share of the radius. Chosen so that a pilot 2 NM off is found with room to spare. */
const CAPTURE_NM = 3;
const CAPTURE_SHARE = 0.4;
/** An arc may be joined before its first radial and left after its last by so much. Chosen: three minutes late at 60 kt. */
const BEYOND_NM = 3;
/** Once on it, it is followed for so many times these, out and past its last radial, as long as the track keeps along it. Chosen: what was flown is told as far as it went. */
const FOLLOWED = 2;
/** Off the radius by so much, or off the tangent, a row counts half. Chosen, as for courses. */
const HALF_NM = 1.5;
const HALF_DEG = 25;
/** A track turns with the arc, or its middle bulges off the chord, by this share of the arc's own at least. A straight past the station does neither. Chosen. */
const TURNS_WITH = 0.3;
/** ... asked where more than this went round: before it, wander hides it. Chosen. */
const TELLS_DEG = 15;
/** ... or where it began with a turn at the first radial and ended with one at the last, within this: one who flew the chord was on the arc all the same. Chosen: half a minute at 120 kt. */
const AT_RADIAL_NM = 1;
/** Runs that fit worse than this are chance. Chosen: a fifth of an arc flown as the aircraft passed by. */
const LEAST_SCORE = 0.15;

/** Every run in flown order. `span` begins with the turn onto the arc and ends with the turn off it. */
export function arcRuns(exercise: ArcExercise, path: FlownPath, flown: Flown): Run[] {
  const { fix, radius, fromRadial, toRadial, turns } = exercise;
  const side = turns === "right" ? 1 : -1;
  const { distance, radial, outward } = measureAround(fix, path.latitude, path.longitude);
  const whole = direction(side * (toRadial - fromRadial));
  const past = (miles: NauticalMiles) => Math.min((360 - whole) / 2, (miles / radius) * DEGREES_PER_RADIAN);
  const beyond = past(BEYOND_NM);
  /** TurnDegrees of the arc behind the aircraft; negative before its first radial. */
  const gone = (i: number): TurnDegrees => {
    const degrees = direction(side * (radial[i]! - fromRadial));
    return degrees > (360 + whole) / 2 ? degrees - 360 : degrees;
  };
  const off = (i: number): NauticalMiles => distance[i]! / METRES_PER_NAUTICAL_MILE - radius;
  const error = (i: number) => turnFrom(outward[i]! + side * 90, flown.trackAngle[i]!);
  const capture = Math.min(CAPTURE_NM, CAPTURE_SHARE * radius);

  const cores: { start: number; end: number }[] = [];
  let bridge = true;
  for (let i = 0; i < distance.length; i++) {
    const around = gone(i);
    const near = Math.abs(off(i)) <= capture && around >= -beyond && around <= whole + beyond;
    const last = cores.at(-1);
    const followed =
      last?.end === i &&
      Math.abs(off(i)) <= FOLLOWED * capture &&
      around >= -beyond &&
      around <= whole + past(FOLLOWED * BEYOND_NM);
    if (!near) bridge = false;
    if (!(near || followed) || !(Math.abs(error(i)) <= ALIGNED_DEG)) continue;
    if (last && (last.end === i || (bridge && flown.flown[i]! - flown.flown[last.end - 1]! <= BRIDGED_NM)))
      last.end = i + 1;
    else cores.push({ start: i, end: i + 1 });
    bridge = true;
  }

  return cores.flatMap((core): Run[] => {
    const straight = withoutTurns(core, flown);
    // round a small arc the turns onto it and off it are one with it
    const kept = straight.end - straight.start >= (core.end - core.start) / 3 ? straight : core;
    if (kept.end - kept.start < 2) return [];
    const round = Math.min(whole, gone(kept.end - 1)) - Math.max(0, gone(kept.start));
    const length = (round / DEGREES_PER_RADIAN) * radius;
    const asked = (whole / DEGREES_PER_RADIAN) * radius;
    if (!(length >= Math.min(SHORTEST_NM, asked / 3))) return [];
    const turns = () => turnedWith(kept, error, side, gone, round) >= TURNS_WITH;
    const bulges = () => bulge(kept, (i) => off(i) + radius, gone) >= TURNS_WITH;
    const turnOn = turnAt(flown.turns, kept.start - 1, TURN_AWAY_DEG);
    const turnOff = turnAt(flown.turns, kept.end, TURN_AWAY_DEG);
    const beside = (i: number, at: TurnDegrees) =>
      (Math.abs(gone(i) - at) / DEGREES_PER_RADIAN) * radius <= AT_RADIAL_NM;
    const fromTo = turnOn && turnOff && beside(kept.start, 0) && beside(kept.end - 1, whole);
    if (round >= TELLS_DEG && !fromTo && !turns() && !bulges()) return [];
    const score = Math.min(1, round / whole) * nearness(kept, flown.flown, off, error);
    if (score < LEAST_SCORE) return [];
    const start = turnOn?.start ?? kept.start;
    const end = turnOff?.end ?? kept.end;
    return [
      { core: kept, span: { start: Math.min(start, kept.start), end: Math.max(end, kept.end) }, score },
    ];
  });
}

/**
 * How much of the arc's own turning the track made, 1 = all, 0 = a straight: the middle one of all pairs of rows a
 * third of the way round apart, so that an overshoot on joining does not tell.
 */
function turnedWith(
  { start, end }: Span,
  error: (row: number) => number,
  side: number,
  gone: (row: number) => TurnDegrees,
  round: TurnDegrees,
): Share {
  const shares: number[] = [];
  for (let i = start, j = start; i < end; i++) {
    while (j < end && gone(j) - gone(i) < round / 3) j++;
    if (j === end) break;
    shares.push(1 + (side * (error(j) - error(i))) / (gone(j) - gone(i)));
  }
  shares.sort((a, b) => a - b);
  return shares[shares.length >> 1] ?? 1;
}

/** How far the middle of the way round lies beyond the chord between its ends, 1 = as the arc does, 0 = a straight. */
function bulge(
  { start, end }: Span,
  distance: (row: number) => NauticalMiles,
  gone: (row: number) => TurnDegrees,
): Share {
  const [first, last] = [gone(start), gone(end - 1)];
  const [d1, d2] = [distance(start), distance(end - 1)];
  const middle = (first + last) / 2;
  let row = start;
  for (let i = start; i < end; i++) if (Math.abs(gone(i) - middle) < Math.abs(gone(row) - middle)) row = i;
  // the chord in polar form: 1/d runs with the sines of the angles from its two ends
  const chord = sinDeg(last - first) / (sinDeg(last - gone(row)) / d1 + sinDeg(gone(row) - first) / d2);
  return (distance(row) - chord) / (((d1 + d2) / 2) * (1 - cosDeg((last - first) / 2)));
}

/** How near and how well aligned, each mile alike. */
function nearness(
  { start, end }: Span,
  flown: Float64Array,
  off: (row: number) => number,
  error: (row: number) => number,
): Share {
  let [sum, weights] = [0, 0];
  for (let i = start + 1; i < end; i++) {
    const weight = flown[i]! - flown[i - 1]!;
    sum += weight * half(off(i), HALF_NM) * half(error(i), HALF_DEG);
    weights += weight;
  }
  return weights > 0 ? sum / weights : 0;
}

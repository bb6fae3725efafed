/**
 * Where the fix is and which course leads to it, from what each inbound leg came to: an aircraft beside the course is
 * still cutting toward it, the more so the farther off it is, so that place and direction belong together.
 */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { AngleSize, Metres, Share, TrueDegrees, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import { climb } from "./climb.ts";
import type { Ground, Place } from "./ground.ts";
import { lastStraight } from "./inbound-line.ts";
import { student } from "./likelihood.ts";
import type { Reading } from "./reading.ts";
import type { TurnEdges } from "./turn-edges.ts";

export interface FixAndCourse {
  readonly fix: Place;
  readonly fixSd: Metres;
  readonly course: TrueDegrees;
  readonly courseSd: AngleSize;
  /** Share of likelihood on quite another course. */
  readonly elsewhere: Share;
}

/** A pilot near the course comes back to it with this time constant, s; farther off than so many seconds of flight, at an angle. Tuned. */
const SOFT_SECONDS = 25;
const CUT_BEYOND_SECONDS = 5;
const CUT_FADE_SECONDS = 1;
const CUT: AngleSize = 27;
const CUT_SD: AngleSize = 6;
/** No pilot cuts like the next: this share of the cut is doubt. Chosen. */
const CUT_DOUBT: Share = 0.3;
/** Inbound legs end so near the course, seconds of flight, when they succeed and when they do not. Tuned. */
const ESTABLISHED_SECONDS = 2;
const MISSED_SECONDS = 12;
const MISSES: Share = 0.2;
/** The turn over the fix begins so near abeam, seconds of flight. Tuned. */
const ABEAM_SECONDS = 2.5;
/** The fix is overflown at the first arrival within, seconds of flight to the side. Tuned. */
const ARRIVAL_SECONDS = 1.5;
/** A known fix so near, seconds of flight, is the hold's, and it was meant to be met within so many. Chosen. */
const KNOWN_FIX_WITHIN = 30;
const KNOWN_FIX_SECONDS = 0.7;
/** The track of a leg flown by hand is looked at each so many seconds, over the last of it, and wanders by so many degrees. Tuned. */
const LOOK_SECONDS = 8;
const LONGEST_LOOK = 90;
const WANDER: AngleSize = 2.2;
/** A pilot turns to the inbound heading first, this often, this well, degrees, or else to anything within so many. Chosen. */
const TURNED_TO: Share = 0.6;
const TURNED_SD: AngleSize = 4;
const TURNED_ELSE: AngleSize = 120;
/** So long after its end a turn may still go on into it, ms. Chosen. */
const TURN_AFTER_MS = 15_000;
/** Share of looks on the way from the one to the other, and of those that fit nothing. Chosen. */
const JOINING: Share = 0.2;
const WILD: Share = 0.05;
/** A course farther than this from the best is another one, degrees. Chosen. */
const ELSEWHERE: AngleSize = 9;

interface Look {
  readonly place: Place;
  readonly track: TrueDegrees;
  /** The last of its leg. */
  readonly last: boolean;
}

/** A line that the fix lies near to. */
interface Sighting {
  readonly place: Place;
  /** Unit vector square to the line. */
  readonly east: number;
  readonly north: number;
  readonly sd: Metres;
}

interface Evidence {
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

export function fixAndCourse(ground: Ground, reading: Reading, fixes: readonly Place[] = []): FixAndCourse {
  const { metres } = ground;
  const starts = reading.turns.filter((_, i) => i % 2 === reading.sense.first).map((t) => t.start);
  const arrivedDirect = !reading.before;
  const sightings: Sighting[] = [];
  const overflown = arrivedDirect ? starts[0]! : reading.before?.time;
  if (overflown !== undefined) {
    const arrival = lastStraight(ground, overflown - 40_000, overflown - 2000);
    const u = { east: sinDeg(arrival.direction), north: cosDeg(arrival.direction) };
    const place = ground.place(overflown);
    sightings.push({ place, east: u.north, north: -u.east, sd: ARRIVAL_SECONDS * metres });
    if (arrivedDirect) sightings.push({ place, ...u, sd: ABEAM_SECONDS * metres });
  }
  for (const place of fixes) {
    const seconds = Math.hypot(place.east - reading.fix.east, place.north - reading.fix.north) / metres;
    if (seconds > KNOWN_FIX_WITHIN) continue;
    for (const [east, north] of [
      [1, 0],
      [0, 1],
    ] as const)
      sightings.push({ place, east, north, sd: KNOWN_FIX_SECONDS * metres });
  }
  const evidence: Evidence = {
    looks: reading.inbound.flatMap(({ from, to }) => looksOf(ground, from, to)),
    abeam: starts.slice(arrivedDirect ? 1 : 0).map((t) => ground.place(t)),
    sightings,
    farthest: reading.turns.flatMap((turn, i) =>
      i % 2 !== reading.sense.first && (i > 0 || reading.before) ? [farthestIn(ground, turn)] : [],
    ),
    headingFor: ground.headingFor,
    metres,
  };
  const value = likelihood(evidence);
  const knownFix = fixes.find((f) => sightings.some((s) => s.place === f));
  const begins = knownFix ? [knownFix] : [reading.fix, ground.place(overflown ?? starts[0]!)];
  const courses: number[] = [];
  for (const { direction } of reading.inbound)
    for (const cut of [0, CUT, -CUT])
      if (courses.every((c) => Math.abs(turnFrom(c, direction + cut)) > ELSEWHERE))
        courses.push(direction + cut);
  const peaks = begins
    .flatMap(({ east, north }) => courses.map((course) => [course, east, north] as const))
    .map((at) => ({ at, value: value(...at) }))
    .sort((a, b) => b.value - a.value)
    .slice(0, MOST_STARTS)
    .map(({ at }) => climb((to) => value(...to), at, [3, metres, metres]))
    .sort((a, b) => b.value - a.value);
  const best = peaks[0]!;
  const [course, east, north] = best.at;
  const weights = peaks.map((p) => Math.exp(p.value - best.value));
  const other = peaks.reduce(
    (w, p, i) => w + (Math.abs(turnFrom(p.at[0], course)) > ELSEWHERE ? weights[i]! : 0),
    0,
  );
  return {
    course,
    courseSd: best.sd[0],
    fix: { east, north },
    fixSd: Math.hypot(best.sd[1], best.sd[2]) / Math.SQRT2,
    elsewhere: other / (1 + other),
  };
}

/** So many courses are tried to the end. */
const MOST_STARTS = 5;

/** The heading that a turn went to before it was taken back. */
function farthestIn(ground: Ground, turn: TurnEdges): TurnDegrees {
  const side = Math.sign(turn.after - turn.before);
  let far = ground.headingAt(turn.end);
  for (let t = turn.end; t < Math.min(turn.end + TURN_AFTER_MS, ground.times[1]); t += 1000) {
    const heading = ground.headingAt(t);
    if (side * (heading - far) > 0) far = heading;
  }
  return far;
}

function looksOf(ground: Ground, from: UtcMillis, to: UtcMillis): Look[] {
  const looks: Look[] = [];
  const first = Math.max(from + 8000, to - LONGEST_LOOK * 1000);
  for (let t = to - 2000; t > first || looks.length === 0; t -= LOOK_SECONDS * 1000) {
    const a = ground.place(t - 2000);
    const b = ground.place(t + 2000);
    const place = ground.place(t);
    looks.push({ place, track: directionOf(b.east - a.east, b.north - a.north), last: looks.length === 0 });
  }
  return looks;
}

/** Log likelihood of a course (degrees on the map) through a fix (m east and north). */
function likelihood({ looks, abeam, sightings, farthest, headingFor, metres }: Evidence) {
  return (course: number, east: number, north: number): number => {
    const e = sinDeg(course);
    const n = cosDeg(course);
    let sum = 0;
    for (const { place, track, last } of looks) {
      const y = ((place.east - east) * n - (place.north - north) * e) / metres; // seconds of flight to the right
      const off = turnFrom(course, track);
      const soft = Math.atan(y / SOFT_SECONDS) * DEGREES_PER_RADIAN;
      const keeps = bell(off + soft, Math.hypot(WANDER, CUT_DOUBT * soft));
      const cuts = bell(off + Math.sign(y) * CUT, Math.hypot(CUT_SD, WANDER));
      const share = 1 / (1 + Math.exp((CUT_BEYOND_SECONDS - Math.abs(y)) / CUT_FADE_SECONDS));
      const joins = bell(off + (Math.sign(y) * CUT) / 2, CUT / 2);
      const meant = (1 - share) * keeps + share * cuts;
      sum += Math.log((1 - JOINING - WILD) * meant + JOINING * joins + WILD / 90);
      if (last)
        sum += Math.log((1 - MISSES) * bell(y, ESTABLISHED_SECONDS) + MISSES * student(y, MISSED_SECONDS));
    }
    const heading = headingFor(course);
    for (const h of farthest)
      sum += Math.log(TURNED_TO * bell(turnFrom(heading, h), TURNED_SD) + (1 - TURNED_TO) / TURNED_ELSE);
    for (const p of abeam)
      sum -= tail(((p.east - east) * e + (p.north - north) * n) / (ABEAM_SECONDS * metres));
    for (const s of sightings)
      sum -= tail(((s.place.east - east) * s.east + (s.place.north - north) * s.north) / s.sd);
    return sum;
  };
}

const bell = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2) / (sd * 2.5066);
/** Minus log of Student's t of 3 degrees but for a constant. */
const tail = (x: number): number => 2 * Math.log(1 + (x * x) / 3);

/** Where the fix is and which course leads to it, from what each inbound leg came to: the likeliest of the tops that climbing from several starts leads to. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Metres, Share, TrueDegrees, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import { climb } from "./climb.ts";
import {
  ABEAM_SECONDS,
  CUT,
  courseLikelihood,
  type Evidence,
  type Look,
  type Sighting,
} from "./course-likelihood.ts";
import type { Ground, Place } from "./ground.ts";
import { lastStraight } from "./inbound-line.ts";
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

/** The fix is overflown at the first arrival within, seconds of flight to the side. Tuned. */
const ARRIVAL_SECONDS = 1.5;
/** A known fix so near, seconds of flight, is the hold's, and it was meant to be met within so many. Chosen. */
const KNOWN_FIX_WITHIN = 30;
const KNOWN_FIX_SECONDS = 0.7;
/** The track of a leg flown by hand is looked at each so many seconds, over the last of it. Tuned. */
const LOOK_SECONDS = 8;
const LONGEST_LOOK = 90;
/** So long after its end a turn may still go on into it, ms. Chosen. */
const TURN_AFTER_MS = 15_000;
/** A course farther than this from the best is another one, degrees. Chosen. */
const ELSEWHERE: AngleSize = 9;

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
  const value = courseLikelihood(evidence);
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

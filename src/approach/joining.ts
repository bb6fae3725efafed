/** How the final was joined: the cut, the overshoot and the corrections, and what led onto it. */
import type { ApproachExercise } from "../brief/brief.ts";
import { localPlane, measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, DegreesPerSecond, Feet, NauticalMiles, Seconds } from "../quantity/units.ts";
import { measureIntercept, turningPoints } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { rowsWithin } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** A turn of the track back by this is a correction: the trade's small correction. */
const CORRECTION: AngleSize = 5;
const CORRECTED_WITHIN: Seconds = 120;
/** What led onto the final is looked for so far back. Chosen: a procedure turn with its outbound leg, or a lap of a hold. */
const LOOK_BACK: Seconds = 420;
/** All the way round, but for a lap flown loosely. */
const ROUND: AngleSize = 330;
/** Turned back on itself: a procedure turn, whose outbound track was within `OUTBOUND` of the reciprocal. Chosen. */
const BACK: AngleSize = 150;
const OUTBOUND: AngleSize = 60;
/** ... and no farther beside the final than this: farther out it was a downwind leg. Chosen. */
const OUTBOUND_BESIDE: NauticalMiles = 1.5;
/** A circuit: outbound within 30° abeam the threshold, so far aside, no higher above it than so. Common practice, no source: 1,000 ft, 1,500 for the fast; with the doubt of a log. */
const DOWNWIND: AngleSize = 150;
const DOWNWIND_BESIDE: readonly [NauticalMiles, NauticalMiles] = [0.4, 2];
const CIRCUIT: Feet = 1700;
/** ... but not from a turn so long before, begun over the field, no lower than so for so long before it. Chosen: a racetrack about a beacon there; whoever took off or went around was lower. */
const OUTBOUND_TURN: Seconds = 180;
const OVER_FIELD: NauticalMiles = 1.5;
const LOW: Feet = 600;
const CLIMBED_OUT: Seconds = 60;
/** Aligned with the final all the while. Chosen: wider than a wind correction being found. */
const ALIGNED: AngleSize = 20;
/** The turn onto the final is quicker than this; an arc of 5 NM and more never is. */
const TURNING: DegreesPerSecond = 1.2;
/** An arc: this long, turned this far by a steady curve of such radii, this near to a circle. Tuned on simulation seeds 1-40. */
const ARC_TIME: Seconds = 170;
const ARC_TURN: AngleSize = 11;
const ARC_RADII: readonly [NauticalMiles, NauticalMiles] = [3, 25];
const ARC_MISS: NauticalMiles = 0.08;

export function interceptOf(rows: ApproachRows, { established }: Segments): ApproachFacts["intercept"] {
  const intercept = measureIntercept(rows, established);
  if (!intercept || established === null) return null;
  const joined = rows.timeMs[established]!;
  const span = rowsWithin(rows, joined, joined + CORRECTED_WITHIN * 1000);
  return {
    ...intercept,
    joinedDistanceNm: rows.distanceNm[established]!,
    overshootNeedle: intercept.overshootNm / rows.fullScaleNm[established]!,
    corrections: turningPoints(rows.trackErrorDeg, span, CORRECTION).length,
  };
}

/** Null where the log has no times. */
export function joinedFrom(
  exercise: ApproachExercise,
  rows: ApproachRows,
  motion: Motion | null,
  { established, threshold }: Segments,
): ApproachFacts["joinedFrom"] {
  if (!motion) return null;
  // the final of a tight circuit is over before anybody can be established on it
  const joined = established ?? threshold?.row ?? null;
  if (joined === null) return "not-joined";
  const last = rows.pathStart + joined;
  let first = last;
  while (first > 0 && motion.time[last]! - motion.time[first - 1]! <= LOOK_BACK * 1000) first--;
  const error = (i: number) => turnFrom(exercise.course.azimuth, motion.trackAngle[i]!);
  let [turned, least, most] = [0, 0, 0];
  const { along, across } = measureColumns(
    exercise.course,
    motion.latitude.subarray(first, last + 1),
    motion.longitude.subarray(first, last + 1),
  );
  let outbound = false;
  let downwind = false;
  let aligned = true;
  for (let i = last; i > first; i--) {
    turned += turnFrom(motion.trackAngle[i]!, motion.trackAngle[i - 1]!);
    least = Math.min(least, turned);
    most = Math.max(most, turned);
    const beside = Math.abs(across[i - first]!) / METRES_PER_NAUTICAL_MILE;
    if (Math.abs(error(i)) > 180 - OUTBOUND && beside < OUTBOUND_BESIDE) outbound = true;
    if (Math.abs(error(i)) > ALIGNED) aligned = false;
    const abeam = along[i - first]! <= 0 && along[i - 1 - first]! > 0;
    const level = motion.altitude[i]! - exercise.runway.elevation < CIRCUIT;
    if (abeam && level && Math.abs(error(i)) > DOWNWIND && within(beside, DOWNWIND_BESIDE))
      downwind ||= !fromOverhead(exercise, motion, i);
  }
  if (established === null) return downwind ? "circuit" : "not-joined";
  if (aligned) return "straight-in";
  if (downwind) return "circuit";
  if (most - least >= ROUND) return "hold";
  if (isArc(motion, first, last)) return "arc";
  return outbound && most - least >= BACK ? "procedure-turn" : "vectors";
}

/**
 * Whether a way outbound that passed abeam the threshold at a row was begun by a turn from over the field, flown over
 * along the final and not climbed away from: of a racetrack about a beacon there, and not of a circuit.
 */
function fromOverhead({ course, runway }: ApproachExercise, motion: Motion, abeam: number): boolean {
  const since = motion.time[abeam]! - OUTBOUND_TURN * 1000;
  let start = abeam;
  while (start > 0 && motion.time[start]! > since) {
    if (Math.abs(turnFrom(course.azimuth, motion.trackAngle[start]!)) <= ALIGNED) break;
    start--;
  }
  if (start === 0 || motion.time[start]! <= since) return false;
  const { along, across } = measureColumns(
    course,
    motion.latitude.subarray(start, start + 1),
    motion.longitude.subarray(start, start + 1),
  );
  const near = Math.hypot(along[0]!, across[0]!) <= OVER_FIELD * METRES_PER_NAUTICAL_MILE;
  const onLine = Math.abs(across[0]!) <= DOWNWIND_BESIDE[0] * METRES_PER_NAUTICAL_MILE;
  if (!near || !onLine) return false;
  for (let i = start; i >= 0 && motion.time[start]! - motion.time[i]! <= CLIMBED_OUT * 1000; i--)
    if (!(motion.altitude[i]! - runway.elevation > LOW)) return false;
  return true;
}

const within = (value: number, [least, most]: readonly [number, number]): boolean =>
  value >= least && value <= most;

/** Whether the way before the turn onto the final was part of a circle. Method: least squares of x2 + y2 = 2ax + 2by + c (I. Kasa, 1976). */
function isArc(motion: Motion, first: number, last: number): boolean {
  let end = last;
  while (end > first && Math.abs(motion.turnRate[end]!) < TURNING) end--;
  while (end > first && Math.abs(motion.turnRate[end]!) > TURNING / 3) end--;
  let start = end;
  while (start > first && motion.time[end]! - motion.time[start]! < ARC_TIME * 1000) start--;
  const n = end - start + 1;
  if (motion.time[end]! - motion.time[start]! < (ARC_TIME - 20) * 1000 || n < 8) return false;
  const plane = localPlane({ latitude: motion.latitude[start]!, longitude: motion.longitude[start]! });
  const points = Array.from({ length: n }, (_, k) => {
    const { east, north } = plane.toPlane(motion.latitude[start + k]!, motion.longitude[start + k]!);
    return { x: east / METRES_PER_NAUTICAL_MILE, y: north / METRES_PER_NAUTICAL_MILE };
  });
  const mean = (pick: (p: { x: number; y: number }) => number) => points.reduce((s, p) => s + pick(p), 0) / n;
  const [mx, my] = [mean((p) => p.x), mean((p) => p.y)];
  const of = (pick: (u: number, v: number) => number) => mean((p) => pick(p.x - mx, p.y - my));
  const [uu, uv, vv] = [of((u) => u * u), of((u, v) => u * v), of((_, v) => v * v)];
  const ru = of((u, v) => u * (u * u + v * v)) / 2;
  const rv = of((u, v) => v * (u * u + v * v)) / 2;
  const det = uu * vv - uv * uv;
  if (!(det > 0)) return false;
  const [a, b] = [(ru * vv - rv * uv) / det, (rv * uu - ru * uv) / det];
  const radius = Math.sqrt(a * a + b * b + uu + vv);
  if (!(radius >= ARC_RADII[0] && radius <= ARC_RADII[1])) return false;
  const way = Math.hypot(points[n - 1]!.x - points[0]!.x, points[n - 1]!.y - points[0]!.y);
  const turn = (way / radius) * DEGREES_PER_RADIAN;
  const miss = Math.sqrt(of((u, v) => (Math.hypot(u - a, v - b) - radius) ** 2));
  return turn >= ARC_TURN && miss <= ARC_MISS;
}

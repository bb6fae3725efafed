/** Without a brief: finals flown to runways that are known, found by geometry and offered as approaches. */
import type { ApproachExercise, Runway } from "../brief/brief.ts";
import { courseBetween, courseThrough, measureColumns, modelVariation } from "../geodesy/index.ts";
import { cosDeg, tanDeg, turnFrom } from "../quantity/angle.ts";
import { angleOf } from "../quantity/descent.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Feet, FeetMsl, NauticalMiles, Seconds } from "../quantity/units.ts";
import { GLIDE_PATH, THRESHOLD_CROSSING } from "../standard/approach-guidance.ts";
import type { Motion } from "../track/motion.ts";

/** On the final: within this angle of the centre line as seen from 1 NM past the threshold, track this near to it. Chosen: a localizer and a half; a wind correction does not matter, the track does. */
const ASIDE: AngleSize = 4;
const BEYOND: NauticalMiles = 1;
/** ... or this near. Chosen: coarse surveillance logs lie 0.2 NM beside what was flown; of two runways the nearer is taken. */
const ASIDE_LEAST: NauticalMiles = 0.25;
const ALIGNED: AngleSize = 15;
/** Flown so for at least this, from no farther out, and to within so much of the threshold, this low (1,000 ft, and 300 for a log of unknown datum). Chosen: shorter finals are circuits. */
const LEAST: NauticalMiles = 2;
const FARTHEST: NauticalMiles = 12;
const NEAREST: NauticalMiles = 1.2;
/** A shorter final counts where it leads to the runway itself. Chosen: the final of a tight circuit. */
const SHORTEST: NauticalMiles = 0.6;
const AT_RUNWAY: NauticalMiles = 0.2;
const LOW: Feet = 1300;
/** Descending on the whole: 1.2 to 7 degrees. Chosen: any flown final lies inside. */
const ANGLES: readonly [AngleSize, AngleSize] = [1.2, 7];
/** A break in it that is bridged. Chosen: a correction. */
const BRIDGED: Seconds = 20;
/** The joining before it, and what follows it, belong to the approach. Chosen: an intercept, and a missed approach. */
const BEFORE: Seconds = 180;
const AFTER: Seconds = 150;

/** A box that holds the final, in degrees of latitude. */
const NEAR = (FARTHEST + 2) / 60;

export interface FoundApproach {
  readonly exercise: ApproachExercise;
  /** The final alone. */
  readonly final: Span;
  /** With what led onto it and what followed. */
  readonly span: Span;
}

/** A landing direction whose elevation may not be known. */
export type KnownRunway = Omit<Runway, "elevation"> & { readonly elevation: FeetMsl | null };

interface Candidate {
  readonly runway: KnownRunway;
  readonly rows: Span;
  /** Mean distance beside the centre line: the better of two parallel runways has less. */
  readonly aside: NauticalMiles;
}

/** The runways that the flight came near to: a list may be of the whole world. */
export function runwaysNear<T extends Pick<Runway, "threshold">>(motion: Motion, runways: readonly T[]): T[] {
  const from = motion.longitude[0] ?? 0; // seen from here no flight crosses the antimeridian
  let [south, north, west, east] = [90, -90, 0, 0];
  for (let i = 0; i < motion.length; i++) {
    const aside = turnFrom(from, motion.longitude[i]!);
    [south, north] = [Math.min(south, motion.latitude[i]!), Math.max(north, motion.latitude[i]!)];
    [west, east] = [Math.min(west, aside), Math.max(east, aside)];
  }
  return runways.filter(({ threshold }) => {
    const wide = NEAR / Math.max(0.05, cosDeg(threshold.latitude));
    const aside = turnFrom(from, threshold.longitude);
    const beside = aside > west - wide && aside < east + wide;
    return beside && threshold.latitude > south - NEAR && threshold.latitude < north + NEAR;
  });
}

/** Approaches in flown order. Each landing direction is a runway of its own; log heights are taken as they are, within 300 ft. */
export function findApproaches(motion: Motion, runways: readonly KnownRunway[]): FoundApproach[] {
  const all = runwaysNear(motion, runways).flatMap((runway) => finalsTo(motion, runway));
  all.sort((a, b) => a.aside - b.aside);
  const kept: Candidate[] = [];
  for (const candidate of all) {
    const overlaps = kept.some(
      (k) => Math.min(k.rows.end, candidate.rows.end) > Math.max(k.rows.start, candidate.rows.start),
    );
    if (!overlaps) kept.push(candidate);
  }
  kept.sort((a, b) => a.rows.start - b.rows.start);
  return kept.map((candidate, index) => offered(motion, candidate, index, kept));
}

const known = (runway: KnownRunway): Runway =>
  runway.elevation === null
    ? { ...runway, elevation: Number.NaN }
    : { ...runway, elevation: runway.elevation };

function finalsTo(motion: Motion, runway: KnownRunway): Candidate[] {
  const course = courseBetween(runway.threshold, runway.end);
  const wide = NEAR / Math.max(0.05, cosDeg(runway.threshold.latitude));
  const rows: number[] = [];
  for (let i = 0; i < motion.length; i++) {
    if (
      Math.abs(motion.latitude[i]! - runway.threshold.latitude) < NEAR &&
      Math.abs(turnFrom(runway.threshold.longitude, motion.longitude[i]!)) < wide &&
      Math.abs(turnFrom(course.azimuth, motion.trackAngle[i]!)) < ALIGNED
    )
      rows.push(i);
  }
  if (rows.length < 3) return [];
  const pick = (column: Float64Array) => Float64Array.from(rows, (i) => column[i]!);
  const { along, across } = measureColumns(course, pick(motion.latitude), pick(motion.longitude));
  const runs: number[][] = [];
  rows.forEach((row, k) => {
    const before = -along[k]! / METRES_PER_NAUTICAL_MILE;
    const aside = across[k]! / METRES_PER_NAUTICAL_MILE;
    if (before < 0 || before > FARTHEST) return;
    if (Math.abs(aside) > Math.max(ASIDE_LEAST, tanDeg(ASIDE) * (before + BEYOND))) return;
    const run = runs.at(-1);
    if (run && motion.time[row]! - motion.time[rows[run.at(-1)!]!]! <= BRIDGED * 1000) run.push(k);
    else runs.push([k]);
  });
  return runs.flatMap((run): Candidate[] => {
    const [first, last] = [run[0]!, run.at(-1)!];
    const from = -along[first]! / METRES_PER_NAUTICAL_MILE;
    const to = -along[last]! / METRES_PER_NAUTICAL_MILE;
    const altitude = (k: number) => motion.altitude[rows[k]!]!;
    const toRunway = to <= AT_RUNWAY && from - to >= SHORTEST;
    if (!toRunway && !(from - to >= LEAST && to <= NEAREST)) return [];
    // a log without heights is judged by its ground track alone
    const heights = !Number.isNaN(altitude(first)) && !Number.isNaN(altitude(last));
    const angle = angleOf(altitude(first) - altitude(last), from - to);
    const low = runway.elevation === null || altitude(last) - runway.elevation < LOW;
    if (heights && !(low && angle > ANGLES[0] && angle < ANGLES[1])) return [];
    const aside =
      run.reduce((sum, k) => sum + Math.abs(across[k]!), 0) / run.length / METRES_PER_NAUTICAL_MILE;
    return [{ runway, rows: { start: rows[first]!, end: rows[last]! + 1 }, aside }];
  });
}

function offered(
  motion: Motion,
  { runway, rows }: Candidate,
  index: number,
  all: readonly Candidate[],
): FoundApproach {
  const { azimuth } = courseBetween(runway.threshold, runway.end);
  const variation = modelVariation(runway.threshold, motion.time[rows.start]!);
  const earliest = motion.time[rows.start]! - BEFORE * 1000;
  const latest = motion.time[rows.end - 1]! + AFTER * 1000;
  let start = rows.start;
  const floor = index > 0 ? all[index - 1]!.rows.end : 0;
  while (start > floor && motion.time[start - 1]! >= earliest) start--;
  let end = rows.end;
  const ceiling = all[index + 1]?.rows.start ?? motion.length;
  while (end < ceiling && motion.time[end]! <= latest) end++;
  return {
    final: rows,
    span: { start, end },
    exercise: {
      kind: "approach",
      index,
      title: runway.ident === null ? "Approach" : `Approach runway ${runway.ident}`,
      between: null,
      altitude: null,
      runway: known(runway),
      course: courseThrough(runway.threshold, azimuth),
      magnetic: magneticCourse(azimuth, variation),
      variation,
      guidance: { kind: "centre-line", width: null, antenna: null, station: null, rnp: null },
      finalFix: null,
      finalFixAltitude: null,
      glidePath: { angle: GLIDE_PATH.usualAngle, crossing: THRESHOLD_CROSSING }, // supposed: see its guide
      minimum: null,
      stepDowns: [],
      missedPoint: 0,
      missedTo: null,
      missedCourse: null,
    },
  };
}

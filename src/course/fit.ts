/** Without a brief: each long straight becomes a course fitted to what was flown, so that straightness can be measured. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Course } from "../geodesy/course.ts";
import {
  courseBetween,
  courseThrough,
  inverse,
  measureColumns,
  modelVariation,
  positionOn,
} from "../geodesy/index.ts";
import { direction, threeFigures } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { NEEDLE_SCALES } from "../standard/needle.ts";
import { airborneRows } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";

/** Shorter straights are not called courses. Tuned: longer than a downwind leg's minute, shorter than any lesson's leg. */
const LEAST_TIME: Seconds = 90;
const LEAST_DISTANCE: NauticalMiles = 2;

/** A straight that strays farther than this from its line is two, parted where it strayed most. Common practice, no source. */
const FARTHEST_ASTRAY: NauticalMiles = 0.5;

/** A course that nobody asked for: measured for straightness, never blamed. */
export interface FittedExercise extends CourseExercise {
  readonly fitted: true;
}

export const isFitted = (exercise: CourseExercise): exercise is FittedExercise =>
  "fitted" in exercise && exercise.fitted === true;

/**
 * The geodesic from beside the first row to beside the last that is nearest to the rows in between, by least squares
 * of the distance across, each row weighted by the time about it.
 */
function fitGeodesic(motion: Motion, { start, end }: Span): Course {
  const at = (i: number) => ({ latitude: motion.latitude[i]!, longitude: motion.longitude[i]! });
  const latitude = motion.latitude.subarray(start, end);
  const longitude = motion.longitude.subarray(start, end);
  let course = courseBetween(at(start), at(end - 1));
  // one step is exact to the curvature across the strip; the second mends a bad first guess
  for (let step = 0; step < 2; step++) {
    const { along, across } = measureColumns(course, latitude, longitude);
    let [w, wa, wx, waa, wax] = [0, 0, 0, 0, 0];
    for (let k = 0; k < along.length; k++) {
      const before = motion.time[start + Math.max(0, k - 1)]!;
      const after = motion.time[start + Math.min(along.length - 1, k + 1)]!;
      const weight = (after - before) / 2000;
      const a = along[k]!;
      w += weight;
      wa += weight * a;
      wx += weight * across[k]!;
      waa += weight * a * a;
      wax += weight * a * across[k]!;
    }
    const slope = (w * wax - wa * wx) / (w * waa - wa * wa);
    const offset = (wx - slope * wa) / w;
    const origin = positionOn(course, 0, offset);
    const azimuth = direction(course.azimuth + Math.atan(slope) * DEGREES_PER_RADIAN);
    course = { ...courseThrough(origin, azimuth), length: along[along.length - 1]! };
  }
  return course;
}

interface Fitted {
  readonly course: Course;
  readonly span: Span;
}

/** The parts of a span that were flown, not rolled on the ground. */
function flownParts({ start, end }: Span, airborne: Uint8Array): Span[] {
  const parts: Span[] = [];
  for (let i = start; i < end; i++) {
    if (airborne[i] !== 1) continue;
    const from = i;
    while (i < end && airborne[i] === 1) i++;
    parts.push({ start: from, end: i });
  }
  return parts;
}

/**
 * Lines along a straight, each near what was flown; none where it is too short.
 * Method: D. H. Douglas and T. K. Peucker, Cartographica 10 (1973) 112-122, parting at the row farthest from
 * the chord. What is near enough is judged by the fitted line; but from that the ends of a wide turn are the farthest,
 * and it would be parted row by row.
 */
function fittedLines(motion: Motion, span: Span): Fitted[] {
  if (span.end - span.start < 3) return [];
  const last = span.end - 1;
  const at = (i: number) => ({ latitude: motion.latitude[i]!, longitude: motion.longitude[i]! });
  const seconds = (motion.time[last]! - motion.time[span.start]!) / 1000;
  const miles = inverse(at(span.start), at(last)).distance / METRES_PER_NAUTICAL_MILE;
  if (!(seconds >= LEAST_TIME && miles >= LEAST_DISTANCE)) return [];
  const course = fitGeodesic(motion, span);
  const astray = (line: Course): Float64Array =>
    measureColumns(
      line,
      motion.latitude.subarray(span.start, span.end),
      motion.longitude.subarray(span.start, span.end),
    ).across;
  const limit = FARTHEST_ASTRAY * METRES_PER_NAUTICAL_MILE;
  if (astray(course).every((x) => Math.abs(x) <= limit)) return [{ course, span }];
  const across = astray(courseBetween(at(span.start), at(last)));
  const farthest = across.reduce((far, x, k) => (Math.abs(x) > Math.abs(across[far]!) ? k : far), 0);
  const middle = span.start + Math.min(Math.max(farthest, 1), across.length - 2);
  return [
    ...fittedLines(motion, { start: span.start, end: middle + 1 }),
    ...fittedLines(motion, { start: middle, end: span.end }),
  ];
}

function fittedExercise(motion: Motion, { course, span }: Fitted, index: number): FittedExercise {
  const variation = modelVariation(course.origin, motion.time[span.start]!);
  const magnetic = magneticCourse(course.azimuth, variation);
  const end = positionOn(course, course.length ?? 0);
  return {
    kind: "course",
    fitted: true,
    index,
    title: `Straight on ${magnetic === null ? `${threeFigures(course.azimuth)}°T` : `${threeFigures(magnetic)}°M`}`,
    between: null,
    altitude: null,
    form: "leg",
    fix: { ...end, ident: "", kind: "other", declination: null, elevation: null },
    fromFix: null,
    course,
    magnetic,
    variation,
    scale: NEEDLE_SCALES["rnav-1"],
  };
}

/** The long straights of a flight as fitted courses, in flown order, with the rows that each was flown on. */
export function fitCourses(
  motion: Motion,
  legs: readonly Leg[],
): { readonly exercise: FittedExercise; readonly span: Span }[] {
  const airborne = airborneRows(motion);
  return legs
    .filter((leg) => leg.kind === "straight")
    .flatMap((leg) => flownParts(leg.span, airborne))
    .flatMap((span) => fittedLines(motion, span))
    .map((fitted, index) => ({ exercise: fittedExercise(motion, fitted, index), span: fitted.span }));
}

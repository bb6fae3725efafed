/** An approach as the matcher looks for it: its final course, flown to the threshold. */
import type { ApproachExercise, CourseExercise, Exercise } from "../brief/brief.ts";
import { courseRuler } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet, FeetMsl, NauticalMiles } from "../quantity/units.ts";
import type { Column } from "../track/track.ts";
import { type Against, measured } from "./against.ts";
import type { Flown, FlownPath } from "./flown.ts";
import { type Run, runsOf } from "./runs.ts";

/** What follows an approach belongs to it for so far: the roll, or the first part of a missed approach. Chosen: two to three minutes in a light aircraft. */
const FOLLOWED_NM: NauticalMiles = 5;

/** A final that leads to its runway is one from this length on. Chosen: the final of a tight circuit, less the turn onto it; so near to the threshold. */
const SHORT_FINAL: { readonly made: NauticalMiles; readonly left: NauticalMiles } = {
  made: 0.4,
  left: 0.2,
};

/** Nearer to the final course, at whatever height, it may be an approach: full scale of an LNAV final (AIM 1-1-18, from memory). */
const ON_FINAL: NauticalMiles = 0.3;
/** Farther beside it all along, it is one only if it comes down: a third of a usual path of 3°, 318 ft/NM. Chosen. */
const COMES_DOWN_FT_PER_NM: Feet = 106;

/** Where no final fix tells, so much of the final is an approach of its own. Chosen: as of finals found without a brief. */
const OWN_FINAL: NauticalMiles = 2;
/** A hold or a course that leads to the final fix and the approach from it share so much before the fix. Chosen: 10 s at 90 kt, in which being established shows. */
const SHARED: NauticalMiles = 0.25;

/** Any needle does to look for it: that of a terminal course. */
const SCALE: CourseExercise["scale"] = {
  id: "rnav-1",
  kind: "linear",
  fullScaleNm: 1,
  label: "",
  citation: "",
};

/** A course as it is; an approach as its final course to the threshold; null for what is found by its window only. */
export function asCourse(exercise: Exercise): CourseExercise | null {
  if (exercise.kind === "course") return exercise;
  if (exercise.kind !== "approach") return null;
  const { index, title, between, altitude, course, magnetic, variation, runway } = exercise;
  const fix = {
    ...course.origin,
    ident: runway.ident ?? "",
    kind: "runway",
    declination: null,
    elevation: runway.elevation,
  } as const;
  const common = { index, title, between, altitude, course, magnetic, variation, scale: SCALE };
  return { ...common, kind: "course", form: "to", fix, fromFix: null };
}

/**
 * Runs along the final course, but for those that pass beside it without coming down, as a downwind leg does. From the
 * last passage of the final fix on each is the approach's own: a hold, a leg or a course may lead there along the same line.
 */
export function approachRuns(
  exercise: ApproachExercise,
  course: CourseExercise,
  path: FlownPath,
  flown: Flown,
): Run[] {
  const runs = runsOf(course, path, flown, SHORT_FINAL);
  if (runs.length === 0) return runs;
  const against = measured(course, path, flown);
  const down = path.altitude ? runs.filter(({ core }) => !passesBy(core, against, path.altitude!)) : runs;
  return down.map((run) => ({ ...run, latest: latestBegin(exercise, run.core, against) }));
}

/** The row just before the final fix was passed last; without a final fix the last one with a final of some length ahead. */
function latestBegin(
  { finalFix, course }: ApproachExercise,
  { start, end }: Span,
  { along }: Against,
): number {
  let from = along[end - 1]! - OWN_FINAL;
  if (finalFix) {
    const ruler = courseRuler(course);
    ruler.measure(finalFix.latitude, finalFix.longitude);
    from = nauticalMilesFromMetres(ruler.along) - SHARED;
  }
  let row = end - 1;
  while (row > start && along[row]! > from) row--;
  return row;
}

function passesBy({ start, end }: Span, { along, across }: Against, altitude: Column<FeetMsl>): boolean {
  const last = end - 1;
  const down = (altitude[start]! - altitude[last]!) / (along[last]! - along[start]!);
  // of a height that is not known nothing is said
  return down < COMES_DOWN_FT_PER_NM && across.subarray(start, end).every((nm) => Math.abs(nm) > ON_FINAL);
}

/** Where the next exercise begins at once, as a hold at the field does, it is followed for so far: the climb away is of both. Chosen: a minute at 120 kt. */
const CLIMBED_NM: NauticalMiles = 2;

/** The row where what followed an approach is over: after so far, or less where the next exercise begins, but then never less than the climb away. */
export function followedTo(end: number, next: number, { flown }: Flown): number {
  const gone = (row: number): NauticalMiles => flown[row]! - flown[end - 1]!;
  let row = end;
  while (row < flown.length && gone(row) <= (row < next ? FOLLOWED_NM : CLIMBED_NM)) row++;
  return row;
}

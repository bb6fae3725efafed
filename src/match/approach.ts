/** An approach as the matcher looks for it: its final course, flown to the threshold. */
import type { CourseExercise, Exercise } from "../brief/brief.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import type { Flown } from "./flown.ts";

/** What follows an approach belongs to it for so far: the roll, or the first part of a missed approach. Chosen: two to three minutes in a light aircraft. */
const FOLLOWED_NM: NauticalMiles = 5;

/** A final that leads to its runway is one from this length on. Chosen: the final of a tight circuit, less the turn onto it; so near to the threshold. */
export const SHORT_FINAL: { readonly made: NauticalMiles; readonly left: NauticalMiles } = {
  made: 0.4,
  left: 0.2,
};

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

/** The row where what followed an approach is over: after so far, or where the next exercise begins. */
export function followedTo(end: number, next: number, { flown }: Flown): number {
  let row = end;
  while (row < Math.max(end, next) && row < flown.length && flown[row]! - flown[end - 1]! <= FOLLOWED_NM)
    row++;
  return row;
}

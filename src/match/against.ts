/** The path against one exercise, row by row. */
import type { CourseExercise } from "../brief/brief.ts";
import { measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Metres, NauticalMiles, TurnDegrees } from "../quantity/units.ts";
import type { Column } from "../track/track.ts";
import type { Flown, FlownPath } from "./flown.ts";

/** An exercise lies within some miles of its course: so far off, m (500 NM), a reading good to 100 m is ample. */
const FAR_ENOUGH: Metres = 926_000;

export interface Against {
  readonly exercise: CourseExercise;
  /** From the origin of the course. */
  readonly along: Column<NauticalMiles>;
  /** Right of course positive. */
  readonly across: Column<NauticalMiles>;
  /** Track less course at the foot, right positive. */
  readonly trackError: Column<TurnDegrees>;
  /** Distance flown from the first row. */
  readonly flown: Column<NauticalMiles>;
}

export function measured(exercise: CourseExercise, path: FlownPath, { trackAngle, flown }: Flown): Against {
  const columns = measureColumns(exercise.course, path.latitude, path.longitude, FAR_ENOUGH);
  return {
    exercise,
    along: columns.along.map(nauticalMilesFromMetres),
    across: columns.across.map(nauticalMilesFromMetres),
    trackError: columns.courseAtFoot.map((course, i) => turnFrom(course, trackAngle[i]!)),
    flown,
  };
}

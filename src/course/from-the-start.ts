/** Whether an aircraft was on its course before its track was ever settled on it: at the fix that the course leads from, and then let go. */
import type { CourseExercise } from "../brief/brief.ts";
import { acrossAt } from "../quantity/needle.ts";
import type { AngleSize, NauticalMiles, TurnDegrees } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { ESTABLISHED_NEEDLE, isCut } from "../track/index.ts";
import type { Rows } from "./path.ts";

/** A track so near to the course is flown along it: a heading on the course drifts by less in 40 kt across at 100 kt. Chosen: less than a usual cut of 30. */
const NEARLY_ALONG: AngleSize = 25;
/** Within the limits and then carried away over so far, it was no intercept. Chosen: half a minute at 100 kt; who means to cut back has turned by then. */
const LET_GO: NauticalMiles = 0.8;
/** Carried away: outward by this. As of excursions; who flies beside the course for half a minute after the turn at the fix is joining it. */
const CARRIED_AWAY: NauticalMiles = 0.1;
/** One whose turn at the fix ended outside the limits is no nearer after this. Chosen: twice as far. */
const LET_GO_OUTSIDE: NauticalMiles = 1.6;
/** The turn at a fix ends within this of it. Chosen: one of 90° at 120 kt and standard rate ends 0.9 NM from where it began. */
const AT_FIX: NauticalMiles = 1;
/** The track of a cut held through the course stays within this. Chosen: twice the wander of a hand-flown heading. */
const SAME_TRACK: AngleSize = 5;

/**
 * The first row from which the aircraft flew nearly along the course without closing on it, begun at the fix that the
 * course leads from; null where there is none, and on a course to a fix, where a track that leads away may be the way to
 * an intercept. An intercept is none: it closes, or it was held through the course from outside the limits. `errorAt`: track less course, right positive, NaN where not known.
 */
export function letGoRow(
  exercise: CourseExercise,
  rows: Rows,
  errorAt: (row: number) => TurnDegrees,
): number | null {
  const { alongNm: along, crossTrackNm: across } = rows;
  const within = (i: number) => Math.abs(across[i]!) <= limitAt(exercise, rows, i);
  const atFix = (i: number) => exercise.form !== "to" && Math.hypot(along[i]!, across[i]!) <= AT_FIX;
  /** Nearly along, and not on its way to the course. */
  const leads = (i: number) => {
    const error = errorAt(i);
    return Math.abs(error) <= NEARLY_ALONG && !isCut(error, across[i]!);
  };
  const heldThrough = (row: number) => {
    const error = errorAt(row);
    for (let k = row - 1; k >= 0 && !rows.gapBefore[k + 1]; k--) {
      if (!(Math.abs(errorAt(k) - error) <= SAME_TRACK)) return false;
      if (!within(k)) return across[k]! * error < 0;
    }
    return false;
  };
  for (let i = 0; i < rows.length; i++) {
    if (!leads(i) || !atFix(i)) continue;
    const [far, outward] = within(i) ? [LET_GO, CARRIED_AWAY] : [LET_GO_OUTSIDE, 0];
    let k = i;
    while (k < rows.length && along[k]! - along[i]! < far && leads(k) && (k === i || !rows.gapBefore[k])) k++;
    if (k === rows.length || !leads(k) || rows.gapBefore[k]) continue;
    if (Math.abs(across[k]!) - Math.abs(across[i]!) >= outward && !heldThrough(i)) return i;
  }
  return null;
}

/** Half scale; beside a station, where the needle tells nothing, that of a mile away. */
function limitAt({ scale }: CourseExercise, rows: Rows, i: number): NauticalMiles {
  const away = rows.distanceToFixNm[i]!;
  return acrossAt(scale, ESTABLISHED_NEEDLE, scale.kind === "angular" ? Math.max(NEAR_STATION, away) : away);
}

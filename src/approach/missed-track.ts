/** The track of a missed approach against the course that the brief gives it. */
import type { ApproachExercise } from "../brief/brief.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { meanOf, rowsWithin, utcOfRow } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";

type Course = NonNullable<NonNullable<ApproachFacts["missed"]>["course"]>;

/** A course nearer than this to the final is flown from the climb on; onto another the aircraft turns first. Chosen: an offset final. */
const STRAIGHT: AngleSize = 30;
/** The turn onto it is over when the track is so near, and is looked for so long. Chosen: as of any course that is joined; half a circle at standard rate, begun half a minute late. */
const TURNED_ONTO: AngleSize = 10;
const TURN_WITHIN: Seconds = 90;
/** The track is judged over this. Chosen: before the first turn of most procedures. */
const OVER: Seconds = 30;
/** A step longer than this may hide a turn away and back. Chosen: half of the time judged. */
const SILENT: Seconds = 15;

/** Null where the brief gives no course. `from`: when the climb began. */
export function missedTrack(
  { missedCourse, course: final }: ApproachExercise,
  rows: ApproachRows,
  from: number,
): Course | null {
  if (!missedCourse) return null;
  const { azimuth, magnetic } = missedCourse;
  const error = rows.trackDeg.map((track) => turnFrom(azimuth, track));
  const straight = Math.abs(turnFrom(final.azimuth, azimuth)) <= STRAIGHT;
  const looked = rowsWithin(rows, from, from + TURN_WITHIN * 1000);
  let first = looked.start;
  if (!straight) while (first < looked.end && !(Math.abs(error[first]!) <= TURNED_ONTO)) first++;
  const turnedOnto = straight || first < looked.end;
  // who never turned onto it is judged by where the turn should have been over
  const begin = straight ? from : rows.timeMs[Math.min(first, looked.end - 1)]!;
  const span = rowsWithin(rows, begin, begin + OVER * 1000);
  return {
    trueDeg: azimuth,
    magneticDeg: magnetic,
    track: toldBetween(rows, begin, begin + OVER * 1000) ? trackOver() : null,
  };

  function trackOver(): Course["track"] {
    let worst = span.start;
    for (let i = span.start; i < span.end; i++) if (Math.abs(error[i]!) > Math.abs(error[worst]!)) worst = i;
    return {
      fromUtc: utcOfRow(rows, span.start)!,
      toUtc: utcOfRow(rows, span.end - 1)!,
      turnedOnto,
      meanErrorDeg: meanOf(error, span.start, span.end),
      worstErrorDeg: error[worst]!,
      worstUtc: utcOfRow(rows, worst)!,
      doubt95Deg: Z95 * rows.trackSdDeg[worst]!,
    };
  }
}

/** Whether the log tells the track all of a time: no long step in it, and none that leads into it or out of it. */
function toldBetween(rows: ApproachRows, from: number, to: number): boolean {
  const { start, end } = rowsWithin(rows, from, to);
  if (end - start < 2) return false;
  const times = [from, ...rows.timeMs.subarray(start, end), to];
  return times.every((time, k) => k === 0 || time - times[k - 1]! <= SILENT * 1000);
}

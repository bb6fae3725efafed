/** The missed approach: where it began, how it climbed and what track it held. */
import type { ApproachExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Seconds } from "../quantity/units.ts";
import { altimeter95, type Moment, rowsWithin, utcAt, valueAt } from "./column.ts";
import { LEVEL, LEVEL_FOR } from "./descent.ts";
import type { ApproachFacts } from "./facts.ts";
import { missedTrack } from "./missed-track.ts";
import type { ApproachPath, ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { hiddenFeet, silenceAt } from "./silence.ts";

/** The climb and the track are taken over this from its start. Chosen: before the first turn of most procedures. */
const CLIMB_OVER: Seconds = 60;
const TRACK_OVER: Seconds = 30;

const known = (value: number): number | null => (Number.isNaN(value) ? null : value);

export function missedOf(
  exercise: ApproachExercise,
  rows: ApproachRows,
  { missed }: Segments,
  path: ApproachPath,
): ApproachFacts["missed"] {
  if (!missed) return null;
  const { start, lowest } = missed;
  const silence = silenceAt(rows, start);
  // what nobody saw of the climb is no part of its rate and its track
  const shown: Moment = silence ? { row: start.row + 1, share: 0 } : start;
  const from = valueAt(rows.timeMs, shown);
  const climb = rowsWithin(rows, from, from + CLIMB_OVER * 1000);
  const straight = rowsWithin(rows, from, from + TRACK_OVER * 1000);
  let [east, north, aside, highest] = [0, 0, 0, rows.altitudeFt[lowest]!];
  for (let i = straight.start; i < straight.end; i++) {
    east += sinDeg(rows.trackDeg[i]!);
    north += cosDeg(rows.trackDeg[i]!);
    if (Math.abs(rows.crossTrackNm[i]!) > Math.abs(aside)) aside = rows.crossTrackNm[i]!;
  }
  for (let i = climb.start; i < rows.length; i++) highest = Math.max(highest, rows.altitudeFt[i]!);
  const track = directionOf(east, north);
  const last = Math.max(climb.start, climb.end - 1);
  const minutes = (rows.timeMs[last]! - from) / 60_000;
  const gained = rows.altitudeFt[last]! - valueAt(rows.altitudeFt, shown);
  const course = missedTrack(exercise, rows, silence ? rows.timeMs[start.row]! : from);
  const altimeter = altimeter95(rows, start.row);
  const fix = exercise.missedTo;
  let nearest = Number.POSITIVE_INFINITY;
  if (fix)
    for (let i = climb.start; i < rows.length; i++) {
      const k = rows.pathStart + i;
      const place = { latitude: path.latitude[k]!, longitude: path.longitude[k]! };
      nearest = Math.min(nearest, nauticalMilesFromMetres(inverse(place, fix).distance));
    }
  return {
    startUtc: utcAt(rows, start),
    ...(silence ? { silence } : {}),
    distanceNm: valueAt(rows.distanceNm, start),
    altitudeFt: valueAt(rows.altitudeFt, start),
    heightFt: known(valueAt(rows.heightFt, start)),
    altimeter95Ft: altimeter === null ? null : altimeter + hiddenFeet(rows, start),
    lowestFt: rows.altitudeFt[lowest]!,
    ...(silence ? {} : levelBefore(rows, start.row)),
    climbFpm: minutes > 0 ? gained / minutes : 0,
    trackTrueDeg: track,
    trackErrorDeg: turnFrom(exercise.course.azimuth, track),
    maxCrossTrackNm: aside,
    ...(course ? { course } : {}),
    climbedFt: highest - rows.altitudeFt[lowest]!,
    to: fix?.ident ?? null,
    nearestToFixNm: Number.isFinite(nearest) ? nearest : null,
  };
}

/** How far and how long it was flown level up to a row. */
function levelBefore(rows: ApproachRows, row: number): Pick<NonNullable<ApproachFacts["missed"]>, "level"> {
  let first = row;
  while (first > 0 && !rows.gapBefore[first] && Math.abs(rows.verticalFpm[first - 1]!) < LEVEL) first--;
  const seconds = (rows.timeMs[row]! - rows.timeMs[first]!) / 1000;
  return seconds >= LEVEL_FOR
    ? { level: { nm: rows.distanceNm[first]! - rows.distanceNm[row]!, seconds } }
    : {};
}

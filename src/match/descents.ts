/** When a descent to a fix was flown: the passage of the fix that a descent led to. */
import type { Brief, DescentExercise } from "../brief/brief.ts";
import { measureAround } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import type { Feet, Seconds, Share } from "../quantity/units.ts";
import { descentAfter, descentBefore, descentPoint, passageRow, rowBefore } from "../track/index.ts";
import type { Flown, FlownPath } from "./flown.ts";
import type { Match } from "./match.ts";
import { half } from "./score.ts";

/** A fix is passed within so much. Chosen: a leg's end is cut by about a mile. */
const PASSED_NM = 2;
/** A fix passed at so much, or a height missed by so much, counts half. Chosen. */
const HALF_NM = 1;
const HALF_FT: Feet = 1500;
/** Passed without a descent. Chosen: less than any descent that was tried. */
const NO_DESCENT = 0.25;
/** Shown before the descent begins and after the fix is passed. Chosen. */
const BEFORE: Seconds = 60;
const AFTER: Seconds = 60;
/** Without times, seconds are those of this ground speed, kt. Common practice for training aircraft, no source. */
const UNTIMED_KT = 100;

/** The matches with those of the descents put in: a descent lies between the exercises before and after it in the brief, or along one of them. */
export function withDescents(brief: Brief, found: readonly Match[], path: FlownPath, flown: Flown): Match[] {
  const { altitude } = path;
  if (!altitude || flown.flown.length < 2) return [...found];
  const clock = secondsOf(path, flown);
  const matches = [...found];
  /** Where the heights of the descents so far were wanted. */
  const crossed: number[] = [];
  brief.exercises.forEach((exercise, i) => {
    if (exercise.kind !== "descent") return;
    if (matches[i]!.by === "geometry") {
      const before = matches.slice(0, i).findLast((m) => m.span !== null)?.span;
      const after = matches.slice(i + 1).find((m) => m.span !== null)?.span;
      const within = { start: before?.start ?? 0, end: after?.end ?? clock.length };
      matches[i] = descentMatch(exercise, i, within, path, altitude, flown, clock, crossed);
    }
    const { span } = matches[i]!;
    if (span) crossed.push(descentPoint(exercise, path, span, flown.flown).row);
  });
  return matches;
}

/** Seconds from the first row. */
function secondsOf({ time }: FlownPath, { flown }: Flown): Float64Array {
  if (!time) return flown.map((miles) => (miles / UNTIMED_KT) * 3600);
  return time.map((t) => (t - time[0]!) / 1000);
}

function descentMatch(
  exercise: DescentExercise,
  index: number,
  within: Span,
  path: FlownPath,
  altitude: Float64Array,
  { flown }: Flown,
  clock: Float64Array,
  crossed: readonly number[],
): Match {
  const { distance } = measureAround(exercise.fix, path.latitude, path.longitude);
  const candidates = passages(distance, within).map((row) => {
    const crossing = rowBefore(flown, row, exercise.before, 0);
    const earlier = Math.max(...crossed.filter((r) => r < crossing));
    const descent = Number.isFinite(earlier)
      ? descentAfter(clock, altitude, crossing, exercise.toAltitude, earlier)
      : descentBefore(clock, altitude, crossing, exercise.toAltitude);
    const start = Math.min(descent?.start ?? crossing, crossing);
    const score: Share =
      half(distance[row]! / METRES_PER_NAUTICAL_MILE, HALF_NM) *
      half(altitude[crossing]! - exercise.toAltitude, HALF_FT) *
      (descent ? 1 : NO_DESCENT);
    const span = {
      start: firstAtOrAfter(clock, clock[start]! - BEFORE),
      end: Math.min(clock.length, firstAtOrAfter(clock, clock[row]! + AFTER) + 1),
    };
    return { span, score };
  });
  candidates.sort((a, b) => b.score - a.score);
  const [best, rival] = candidates;
  if (!best || !(best.score > 0)) return { exercise: index, span: null, by: "geometry", confidence: 0 };
  const confidence = best.score * (1 - Math.min(1, (rival?.score ?? 0) / best.score) / 2);
  return { exercise: index, span: best.span, by: "geometry", confidence };
}

/** Rows where the fix was passed: one of each run of rows that is near enough. */
function passages(distance: Float64Array, { start, end }: Span): number[] {
  const limit = PASSED_NM * METRES_PER_NAUTICAL_MILE;
  const rows: number[] = [];
  for (let i = start; i < end; i++) {
    if (!(distance[i]! <= limit)) continue;
    const first = i;
    while (i < end && distance[i]! <= limit) i++;
    rows.push(passageRow(distance, first, i));
  }
  return rows;
}

/**
 * Points that nobody measured: logs made from a plot each 20 or 30 s, with points drawn between on straight lines.
 *
 * Taken as measured they make polygons of turns: straight, a corner, straight. What was measured are the corners, and
 * between them a drawn point is off by as much as an arc that bends like its corners stands off from its chord.
 */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import { bendAt, distanceBetween } from "./bend.ts";

/** Bends smaller than this, deg, are of no interest. Chosen, as the next three are. */
const LEAST_CORNER = 5;
/** A corner stands alone: beside it the path is straight to this share of its bend, or to what rounding bends. */
const STRAIGHT_SHARE = 0.05;
const ROUNDING_METRES = 1.5;
/** A log is drawn where most of its turning is in corners, and there are a few. A flown turn bends at every point. */
const CORNER_SHARE = 0.6;
const LEAST_TURNING = 150;
/** At longer intervals every log has corners, s. */
const LONGEST_INTERVAL = 10;
/** The points of a chord err together, so each says less: their deviation counts so many times. Chosen. */
const TOGETHER = 2;
/** Plots lie no farther apart than so many usual intervals. Chosen. */
const LONGEST_CHORD = 1.5;
/** A plot that the path must swerve for by so much, deg, is wild. Chosen: more than two plots of a turn bend. */
const SWERVE = 60;

/**
 * The variance that drawing adds to each row, m2 (infinite for a wild plot); null where the log was measured
 * throughout. Places are Cartesian, m.
 */
export function drawnVariance(
  seconds: Float64Array,
  place: Float64Array,
  spans: readonly Span[],
): Float64Array | null {
  const bend = new Float64Array(seconds.length);
  const level = new Float64Array(seconds.length); // up to this bend a row lies on a line
  for (const { start, end } of spans) {
    for (let k = start + 1; k < end - 1; k++) {
      const step = Math.min(distanceBetween(place, k - 1, k), distanceBetween(place, k, k + 1));
      bend[k] = bendAt(place, k - 1, k, k + 1);
      level[k] = (ROUNDING_METRES / (step + 1)) * DEGREES_PER_RADIAN;
    }
  }
  if (!looksDrawn(seconds, bend, level, spans)) return null;
  const variance = new Float64Array(seconds.length);
  const corners = spans.map(({ start, end }) => {
    const found = [start];
    for (let k = start + 1; k < end; k++) if (k === end - 1 || bend[k]! > level[k]!) found.push(k);
    return withoutWild(place, found, variance);
  });
  const chord = usualChord(seconds, bend, corners);
  for (const run of corners) addChords(seconds, place, run, chord, variance);
  return variance;
}

function looksDrawn(
  seconds: Float64Array,
  bend: Float64Array,
  level: Float64Array,
  spans: readonly Span[],
): boolean {
  let turning = 0;
  let corners = 0;
  let short = 0;
  for (const { start, end } of spans) {
    for (let k = start + 1; k < end - 1; k++) {
      if (seconds[k]! - seconds[k - 1]! <= LONGEST_INTERVAL) short++;
      if (bend[k]! < LEAST_CORNER) continue;
      turning += bend[k]!;
      const line = Math.max(STRAIGHT_SHARE * bend[k]!, level[k]!);
      if (bend[k - 1]! < line && bend[k + 1]! < line) corners += bend[k]!;
    }
  }
  return short > seconds.length / 2 && corners > LEAST_TURNING && corners > CORNER_SHARE * turning;
}

/** Leaves out corners that the path would have to swerve for. */
function withoutWild(place: Float64Array, corners: readonly number[], variance: Float64Array): number[] {
  const kept: number[] = [];
  for (const corner of corners) {
    kept.push(corner);
    if (kept.length < 5) continue;
    const [a, b, c, d, e] = kept.slice(-5) as [number, number, number, number, number];
    const bends = bendAt(place, a, b, c) + bendAt(place, b, c, d) + bendAt(place, c, d, e);
    const without = bendAt(place, a, b, d) + bendAt(place, b, d, e);
    if (bends - without <= SWERVE) continue;
    variance[c] = Number.POSITIVE_INFINITY;
    kept.splice(-3, 1);
  }
  return kept;
}

/** The usual time between plots, s: the median between corners that both bend. */
function usualChord(seconds: Float64Array, bend: Float64Array, corners: readonly number[][]): number {
  const between = corners.flatMap((run) =>
    run.flatMap((k, i) =>
      i > 0 && Math.min(bend[k]!, bend[run[i - 1]!]!) > LEAST_CORNER
        ? [seconds[k]! - seconds[run[i - 1]!]!]
        : [],
    ),
  );
  return between.sort((a, b) => a - b)[between.length >> 1] ?? LONGEST_INTERVAL;
}

/** Between two corners: how far an arc that bends like them stands off, near each end as its own corner bends. */
function addChords(
  seconds: Float64Array,
  place: Float64Array,
  corners: readonly number[],
  chord: number,
  variance: Float64Array,
): void {
  const bend = corners.map((k, i) =>
    i > 0 && i < corners.length - 1
      ? bendAt(place, corners[i - 1]!, k, corners[i + 1]!) / DEGREES_PER_RADIAN
      : 0,
  );
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1]!, corners[i]!];
    const time = seconds[b]! - seconds[a]!;
    const reach = Math.min(time, LONGEST_CHORD * chord);
    const length = (distanceBetween(place, a, b) * reach) / time;
    const standsOff = (radians: number, after: number) => {
      const share = after / reach;
      return share < 1 ? (length * radians * share * (1 - share)) / 4 : 0;
    };
    for (let k = a + 1; k < b; k++) {
      if (variance[k] === Number.POSITIVE_INFINITY) continue;
      const off =
        standsOff(bend[i - 1]!, seconds[k]! - seconds[a]!) + standsOff(bend[i]!, seconds[b]! - seconds[k]!);
      variance[k] = (TOGETHER * off) ** 2;
    }
  }
}

/** Several flights in one log: cut apart where the recorder was silent for long while the aircraft stood. */

import type { Span } from "../quantity/span.ts";
import { HOUR_MS } from "../quantity/time.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { stepBetween } from "./step.ts";
import type { Track } from "./track.ts";

/** Minutes of silence: longer than a receiver loses its fix in flight, shorter than a turnround. Tuned, no source. */
const SILENCE_MIN = 10;
/** Longer than any light aircraft stays up: even a recorder that fell silent in flight missed a landing. Common practice, no source. */
const ENDURANCE_MIN = 12 * 60;
/** Knots: mean speed over the silence, and beside it; below, the aircraft stood or taxied. Common practice, no source. */
const GROUND_KT = 30;
/** Seconds beside the silence in which the speed is taken. */
const BESIDE_S = 60;

export interface Flight {
  /** Rows of the track. */
  readonly span: Span;
  /** The farthest that the aircraft came from the span's first point; small for a stay on the ground. */
  readonly farthest: NauticalMiles;
}

/**
 * The flights of a cleaned track, in order; together they are the whole track. A cut needs 10 min of silence, less
 * than 30 kt from the place before to the place after it, and less than 30 kt in the minute on one of its sides. So a
 * recorder that fails in flight cuts nothing, unless for 12 h. A log without times is one flight; an empty one has none.
 */
export function findFlights(track: Track): Flight[] {
  const { length, time } = track;
  if (length === 0) return [];
  const starts = [0];
  for (let row = 1; row < length; row++) {
    const silence = time[row]! - time[row - 1]!;
    if (!(silence >= SILENCE_MIN * 60_000)) continue;
    if (silence >= ENDURANCE_MIN * 60_000) {
      starts.push(row);
      continue;
    }
    if (!(speed(track, row - 1, row) < GROUND_KT)) continue;
    const before = beside(track, row - 1, -1);
    const after = beside(track, row, 1);
    if (before < GROUND_KT || after < GROUND_KT) starts.push(row);
  }
  return starts.map((start, k) => {
    const span = { start, end: starts[k + 1] ?? length };
    return { span, farthest: farthestFrom(track, span) };
  });
}

const distance = ({ latitude, longitude }: Track, a: number, b: number): NauticalMiles =>
  stepBetween(latitude[a]!, longitude[a]!, latitude[b]!, longitude[b]!);

const speed = (track: Track, a: number, b: number): number =>
  distance(track, a, b) / (Math.abs(track.time[b]! - track.time[a]!) / HOUR_MS);

/** Knots from `row` to the last point within a minute in that direction; 0 where there is none: it had just come alive. */
function beside(track: Track, row: number, step: 1 | -1): number {
  let end = row;
  for (let i = row + step; i >= 0 && i < track.length; i += step) {
    if (Math.abs(track.time[i]! - track.time[row]!) > BESIDE_S * 1000) break;
    end = i;
  }
  return end === row ? 0 : speed(track, row, end);
}

function farthestFrom(track: Track, { start, end }: Span): NauticalMiles {
  let farthest = 0;
  for (let row = start; row < end; row++) farthest = Math.max(farthest, distance(track, start, row));
  return farthest;
}

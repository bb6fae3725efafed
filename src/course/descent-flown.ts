/** How a descent was flown: where it began and reached its height, the rates needed and flown, the level-offs on the way. */
import type { DescentExercise } from "../brief/brief.ts";
import { angleOf } from "../quantity/descent.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Feet, FeetMsl, FeetPerMinute, NauticalMiles, Seconds } from "../quantity/units.ts";
import type { DescentFacts } from "./descent-facts.ts";
import type { DescentRows } from "./descent-rows.ts";

/** The height is reached from this much above it. FAA-S-ACS-8C: heights are held to 100 ft. */
export const REACHED: Feet = 100;
/** Level: losing less than this; told as a level-off from so long, so far above the height. Chosen: a third of a slow descent; longer than a wander. */
const LEVEL: FeetPerMinute = 150;
const LEVEL_FOR: Seconds = 20;
const LEVEL_ABOVE: Feet = 200;
const LEVEL_BROKEN: Seconds = 10;
/** So far below the height before, the descent was begun for certain. As where a descent is looked for. */
const BELOW: Feet = 80;
/** Nearer to the point than this the needed rate runs away. Chosen. */
const LAST: NauticalMiles = 0.5;

export function meanOf(column: Float64Array, start: number, end: number): number | null {
  let [sum, n] = [0, 0];
  for (let i = start; i < end; i++) {
    if (Number.isNaN(column[i]!)) continue;
    sum += column[i]!;
    n++;
  }
  return n > 0 ? sum / n : null;
}

/** First row near the height, from where the descent began to the end of the exercise. */
export function reachedRow(
  { altitudeFt, began, point }: DescentRows,
  to: FeetMsl,
  end: number,
): number | null {
  for (let i = began?.row ?? point; i < end; i++) if (altitudeFt[i]! <= to + REACHED) return i;
  return null;
}

/**
 * The lowest row from where the descent began to the point; null where it is not more than 100 ft below the height and
 * below the point's own.
 */
export function lowestRow({ altitudeFt, began, point, pointFt }: DescentRows, to: FeetMsl): number | null {
  if (!began) return null;
  let lowest = began.row;
  for (let i = began.row; i < point; i++) if (altitudeFt[i]! < altitudeFt[lowest]!) lowest = i;
  return altitudeFt[lowest]! < Math.min(to, pointFt) - REACHED ? lowest : null;
}

/** The first row that shows the descent, where it was begun in a silence of the log that ends there; null where its beginning was seen. */
export function firstSeen({ began, altitudeFt, point, silentBefore }: DescentRows): number | null {
  if (!began) return null;
  let row = began.row;
  while (row < point && !(altitudeFt[row]! < began.from - BELOW)) row++;
  return silentBefore(row) === null ? null : row;
}

/** Feet to lose over miles to go at a row, and the rate at its ground speed. */
export function neededAt({ toAltitude }: DescentExercise, rows: DescentRows, row: number) {
  const gradient = (rows.altitudeFt[row]! - toAltitude) / rows.toGoNm[row]!;
  return { gradient, rate: (gradient * rows.groundSpeedKt[row]!) / 60 };
}

export function beganFacts(
  exercise: DescentExercise,
  rows: DescentRows,
  { row: start, from, afterEarlier }: NonNullable<DescentRows["began"]>,
  utcAt: (row: number) => string | null,
): DescentFacts["began"] {
  const seen = firstSeen(rows);
  const row = seen ?? start;
  const toGo = rows.toGoNm[row]!;
  const left = seen === null ? from : rows.altitudeFt[row]!;
  const gradient = Math.max(0, left - exercise.toAltitude) / Math.max(0.01, toGo);
  const speed = rows.groundSpeedKt[row]!;
  const silence = seen !== null && {
    seconds: rows.silentBefore(seen)!,
    fromUtc: utcAt(seen - 1)!,
    earliestToGoNm: rows.toGoNm[seen - 1]!,
  };
  return {
    utc: silence ? null : utcAt(row),
    altitudeFt: from,
    toGoNm: toGo,
    groundSpeedKt: Number.isNaN(speed) ? null : speed,
    neededDownFpm: Number.isNaN(speed) ? null : (gradient * speed) / 60,
    neededDownFtPerNm: gradient,
    neededDeg: angleOf(gradient, 1),
    ...(afterEarlier ? { afterEarlier } : {}),
    ...(silence ? { silence } : {}),
  };
}

/** Null where nothing of it was seen. `last`: the row where the height was reached, or that of the point. */
export function flownFacts(
  rows: DescentRows,
  last: number,
  levelOffs: DescentFacts["levelOffs"],
): DescentFacts["flown"] {
  const began = rows.began!;
  const seen = firstSeen(rows);
  const start = seen ?? began.row;
  // it may have been level for a part of a silence that ends it
  const until = last - 1 > start && rows.silentBefore(last) !== null ? last - 1 : last;
  if (seen !== null && until <= seen) return null;
  const lost = (seen === null ? began.from : rows.altitudeFt[seen]!) - rows.altitudeFt[until]!;
  const distance = Math.max(0.01, rows.toGoNm[start]! - rows.toGoNm[until]!);
  const seconds = rows.clock[until]! - rows.clock[start]!;
  const level = levelOffs.reduce((sum, { seconds: s }) => sum + s, 0);
  let steepest = Number.NaN;
  for (let i = start; i <= until; i++) if (!(rows.downFpm[i]! <= steepest)) steepest = rows.downFpm[i]!;
  const minutes = Math.max(1, seconds - level) / 60;
  return {
    lostFt: lost,
    seconds: rows.timed ? seconds : null,
    distanceNm: distance,
    meanDownFpm: rows.timed ? lost / minutes : null,
    meanDownFtPerNm: lost / distance,
    steepestDownFpm: Number.isNaN(steepest) ? null : steepest,
  };
}

export function levelOffsOf(
  { began, point, downFpm, clock, altitudeFt }: DescentRows,
  to: FeetMsl,
  utc: (seconds: Seconds) => string,
): DescentFacts["levelOffs"] {
  const runs: { start: number; end: number }[] = [];
  const settled = firstAtOrAfter(clock, clock[began!.row]! + LEVEL_FOR); // the beginning itself is soft
  for (let i = settled; i < point; i++) {
    if (!(downFpm[i]! < LEVEL && altitudeFt[i]! > to + LEVEL_ABOVE)) continue;
    const last = runs.at(-1);
    // a height that wanders is level all the same
    if (last && clock[i]! - clock[last.end]! <= LEVEL_BROKEN) last.end = i;
    else runs.push({ start: i, end: i });
  }
  return runs
    .map(({ start, end }) => ({
      fromUtc: utc(clock[start]!),
      toUtc: utc(clock[end]!),
      seconds: clock[end]! - clock[start]!,
      altitudeFt: meanOf(altitudeFt, start, end + 1)!,
    }))
    .filter(({ seconds }) => seconds >= LEVEL_FOR);
}

export function mostNeeded(
  exercise: DescentExercise,
  rows: DescentRows,
  from: number,
  utc: (seconds: Seconds) => string,
): DescentFacts["mostNeeded"] {
  let worst: { rate: number; row: number } | null = null;
  for (let i = from; i < rows.point && rows.toGoNm[i]! >= LAST; i++) {
    const { rate } = neededAt(exercise, rows, i);
    if (!Number.isNaN(rate) && (!worst || rate > worst.rate)) worst = { rate, row: i };
  }
  return worst && { downFpm: worst.rate, utc: utc(rows.clock[worst.row]!) };
}

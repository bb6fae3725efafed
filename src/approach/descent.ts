/** The way down: levels, the line that was flown and the one that would have fitted. */
import type { ApproachExercise } from "../brief/brief.ts";
import { pathHeight } from "../geodesy/index.ts";
import { angleOf, gradientOf, rateOn } from "../quantity/descent.ts";
import {
  DEGREES_PER_RADIAN,
  feetFromMetres,
  METRES_PER_FOOT,
  metresFromNauticalMiles,
} from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet, FeetPerMinute, NauticalMiles, Seconds } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { THRESHOLD_CROSSING } from "../standard/approach-guidance.ts";
import { altimeter95, meanOf, utcOfRow, valueAt } from "./column.ts";
import type { ApproachFacts } from "./facts.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";
import { type PathGuide, visualDescentPoint } from "./vertical.ts";

/** Level: slower than this for so long. Chosen: above hand-flown wander of 20 ft over a minute, below any descent. */
export const LEVEL: FeetPerMinute = 200;
export const LEVEL_FOR: Seconds = 12;
/** A line is laid through a descent of at least this length. Chosen. */
const LINE_LEAST: NauticalMiles = 0.7;
/** The flare is no part of it. Common practice, no source. */
const FLARE: Feet = 60;

type Level = NonNullable<ApproachFacts["descent"]>["levels"][number];

/** Stretches flown level on the final, in flown order, with their last row. */
function levelsOf(rows: ApproachRows, { final }: Segments): (Level & { readonly end: number })[] {
  const found: (Level & { readonly end: number })[] = [];
  for (let i = final.start; i < final.end; i++) {
    if (!(Math.abs(rows.verticalFpm[i]!) < LEVEL)) continue;
    const start = i;
    while (i + 1 < final.end && Math.abs(rows.verticalFpm[i + 1]!) < LEVEL) i++;
    const seconds = (rows.timeMs[i]! - rows.timeMs[start]!) / 1000;
    if (!(seconds >= LEVEL_FOR)) continue;
    const altimeter95Ft = altimeter95(rows, (start + i) >> 1);
    found.push({
      fromUtc: utcOfRow(rows, start)!,
      toUtc: utcOfRow(rows, i)!,
      fromNm: rows.distanceNm[start]!,
      toNm: rows.distanceNm[i]!,
      altitudeFt: meanOf(rows.altitudeFt, start, i + 1),
      ...(altimeter95Ft === null ? {} : { altimeter95Ft }),
      seconds,
      end: i,
    });
  }
  return found;
}

/** `down`: the rows of the final without a climb away. */
export function descentOf(
  exercise: ApproachExercise,
  rows: ApproachRows,
  segments: Segments,
  down: Span,
  pathGuide: PathGuide | null,
): { readonly descent: ApproachFacts["descent"]; readonly flownPath: ApproachFacts["flownPath"] } {
  const { final, fix } = segments;
  const known = rows.altitudeFt.subarray(final.start, final.end).some((v) => !Number.isNaN(v));
  if (!rows.timed || !known) return { descent: null, flownPath: null };
  const levels = levelsOf(rows, segments);
  const crossing = pathGuide?.crossing ?? THRESHOLD_CROSSING;
  const speed = meanOf(rows.groundSpeedKt, final.start, final.end);
  const at = fix ?? { row: final.start, share: 0 };
  const [height, distance] = [valueAt(rows.heightFt, at), valueAt(rows.distanceNm, at)];
  const angle = angleOf(height - crossing, distance);
  let sink = 0;
  for (let i = down.start; i < down.end; i++) sink = Math.max(sink, -rows.verticalFpm[i]!);
  const minimum = exercise.minimum && exercise.minimum.altitude - exercise.runway.elevation;
  return {
    descent: {
      meanFpm: -meanOf(rows.verticalFpm, down.start, down.end),
      mostFpm: sink,
      constant:
        distance > 0 && height > crossing
          ? { angleDeg: angle, feetPerNm: gradientOf(angle), fpm: rateOn(angle, speed) }
          : null,
      visualDescentPointNm: minimum === null ? null : visualDescentPoint(minimum, pathGuide?.angle, crossing),
      levels: levels.map(({ end: _, ...level }) => level),
    },
    flownPath: flownPath(rows, down, levels.at(-1)?.end ?? null, pathGuide),
  };
}

/**
 * The straight line nearest to the heights flown (least squares over the distance), from the fix or the last level
 * down to the flare. Its doubt: what a receiver's height error may change over the stretch, over its length.
 */
function flownPath(
  rows: ApproachRows,
  final: Span,
  levelEnd: number | null,
  pathGuide: PathGuide | null,
): ApproachFacts["flownPath"] {
  // level at the minimum until the end: then the line is that of the descent to it
  const start = levelEnd !== null && levelEnd < final.end - 2 ? levelEnd : final.start;
  const shape = pathGuide?.shape ?? "straight";
  let [n, d, h, dd, dh] = [0, 0, 0, 0, 0];
  let [first, last] = [-1, -1];
  for (let i = start; i < final.end; i++) {
    if (!(rows.heightFt[i]! > FLARE && rows.distanceNm[i]! > 0)) continue;
    if (first < 0) first = i;
    last = i;
    const distance = rows.distanceNm[i]!;
    // on a flat earth: less what a level line of sight rises over the ground
    const height =
      rows.heightFt[i]! - feetFromMetres(pathHeight(0, metresFromNauticalMiles(distance), shape));
    n++;
    d += distance;
    h += height;
    dd += distance * distance;
    dh += distance * height;
  }
  if (first < 0 || rows.distanceNm[first]! - rows.distanceNm[last]! < LINE_LEAST) return null;
  const slope = (n * dh - d * h) / (n * dd - d * d);
  const length = metresFromNauticalMiles(rows.distanceNm[first]! - rows.distanceNm[last]!) / METRES_PER_FOOT;
  const change = Math.abs(rows.heightSdFt[first]! - rows.heightSdFt[last]!) + HEIGHT_CHANGE;
  return {
    angleDeg: angleOf(slope, 1),
    angle95Deg: Z95 * Math.atan2(change, length) * DEGREES_PER_RADIAN,
    atThresholdFt: (h - slope * d) / n,
  };
}

/** One standard deviation of how far a receiver's height error changes over a final of minutes, ft. Chosen: the 22 ft of the whole error, little of which a line follows. */
const HEIGHT_CHANGE: Feet = 16;

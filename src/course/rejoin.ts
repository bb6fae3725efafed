/** What would have worked: the heading that holds the course in that wind, and the cut that rejoins from the worst point. */

import type { CourseExercise } from "../brief/brief.ts";
import { direction, tanDeg } from "../quantity/angle.ts";
import { worstExcursion } from "../quantity/excursion-record.ts";
import { magneticHeading } from "../quantity/magnetic.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Share } from "../quantity/units.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import type { ExcursionRows } from "../track/index.ts";
import { neededCorrection } from "../wind/index.ts";
import type { WindFact } from "../wind/wind.ts";
import type { WhatWouldHaveWorked } from "./facts.ts";
import type { Rows } from "./path.ts";

/** Cuts that a pilot can fly without a table, smallest first. Common practice, no source. */
const CUTS: readonly AngleSize[] = [5, 10, 15, 20, 30, 45];
/** The course is to be joined again within this, or within half of what is left to the station. */
const REJOIN_WITHIN: NauticalMiles = 3;
/** A needle off by less than this is held by small corrections; no cut is named. Common practice, no source. */
const WORTH_A_CUT: Share = 0.25;
/** With less room than this before the station there is nothing left to rejoin. Common practice, no source. */
const LEAST_ROOM: NauticalMiles = 0.5;

/** The smallest of the cuts that joins a course again within a distance along it; the largest where none does. */
export function rejoinCut(
  off: NauticalMiles,
  within: NauticalMiles,
): { cut: AngleSize; distance: NauticalMiles } {
  const size = Math.abs(off);
  const cut = CUTS.find((c) => size / tanDeg(c) <= within) ?? CUTS.at(-1)!;
  return { cut, distance: size / tanDeg(cut) };
}

/** Null where the wind is not known in full: no heading can be named then. */
export function whatWouldHaveWorked(
  exercise: CourseExercise,
  rows: Rows,
  courseTrue: number,
  wind: WindFact | null,
  excursions: readonly ExcursionRows[],
): WhatWouldHaveWorked {
  const correction = wind && neededCorrection(courseTrue, wind);
  if (!wind || !correction) return null;
  const worst = worstExcursion(excursions.map(({ record, worst: row }) => ({ ...record, row })));
  const { heading } = correction;
  return {
    headingTrueDeg: heading,
    headingMagneticDeg: magneticHeading(heading, exercise.variation),
    windCorrectionDeg: correction.needed,
    doubt95Deg: correction.doubt95,
    rejoin: worst && rejoin(exercise, rows, wind, worst.row),
  };
}

function rejoin(exercise: CourseExercise, rows: Rows, wind: WindFact, worst: number) {
  if (Math.abs(rows.needle[worst]!) < WORTH_A_CUT) return null;
  const off = rows.crossTrackNm[worst]!;
  const toGo = rows.distanceToFixNm[worst]!;
  const room = exercise.form === "from" ? REJOIN_WITHIN : Math.max(0, toGo - NEAR_STATION) / 2;
  if (room < LEAST_ROOM) return null;
  const { cut, distance } = rejoinCut(off, Math.min(REJOIN_WITHIN, room));
  const signed = -Math.sign(off) * cut;
  const solved = neededCorrection(direction(rows.courseAtFootDeg[worst]! + signed), wind);
  if (!solved) return null;
  const fromUtc = utcText(rows.timeMs[worst]!);
  return { cutDeg: signed, headingTrueDeg: solved.heading, distanceNm: distance, fromUtc };
}

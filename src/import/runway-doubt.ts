/** What can hardly be true of a runway of a list: a direction far from its number, and a length that none has. */
import { inverse, type ListedPoint, type Position, UNDATED, variationAt } from "../geodesy/index.ts";
import { magneticFromTrue, threeFigures, turnFrom } from "../quantity/angle.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Issue } from "../quantity/issue.ts";
import type { AngleSize, Metres } from "../quantity/units.ts";

/** Longer than any runway; the longest are some 5.5 km (from memory). */
const LONGEST_RUNWAY: Metres = 7000;
/** A runway's number is its magnetic course in tens, and lags behind the variation. Chosen: three numbers off is a slip. */
const NUMBER_FITS: AngleSize = 30;

/** Codes `runway-too-long`, `runway-off-its-number`, with their facts; the runway is used as written. */
export function runwayDoubts(
  { ident, declination, ...threshold }: ListedPoint,
  end: Position,
): Pick<Issue, "code" | "facts">[] {
  const { distance, azimuthAtStart } = inverse(threshold, end);
  const lengthNm = Math.round(nauticalMilesFromMetres(distance));
  const tooLong = distance > LONGEST_RUNWAY ? [{ code: "runway-too-long", facts: { ident, lengthNm } }] : [];
  const number = Number(/(\d{1,2})[LRC]?(?:\s*[/-]\s*\d{1,2}[LRC]?)?$/i.exec(ident)?.[1] ?? Number.NaN);
  const variation = declination ?? variationAt(threshold, UNDATED)?.degrees ?? 0;
  const course = magneticFromTrue(azimuthAtStart, variation);
  if (!(number >= 1 && number <= 36) || Math.abs(turnFrom(number * 10, course)) <= NUMBER_FITS)
    return tooLong;
  return [
    ...tooLong,
    { code: "runway-off-its-number", facts: { ident, courseMagnetic: threeFigures(course) } },
  ];
}

/** Moments of an approach that lie in a silence of the log, and what that may hide of what is read there between two points. */
import type { Span } from "../quantity/span.ts";
import type { Feet, FeetMsl, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import {
  knownAtEnds,
  type SilentEdge,
  SPOKEN,
  SPOKEN_FT,
  strayedInHeight,
  type Unseen,
  type UnseenRecord,
  unseenOf,
} from "../quantity/unseen.ts";
import type { Moment } from "./column.ts";
import { type NeedleStray, sideways } from "./deviation.ts";
import type { MomentSilence } from "./fact-parts.ts";
import type { ApproachRows } from "./rows.ts";

/** Null where the moment lies in none. */
export function silenceAt(rows: ApproachRows, { row, share }: Moment): MomentSilence | null {
  const seconds = share > 0 ? rows.silentBefore(row + 1) : null;
  if (seconds === null) return null;
  return { seconds, fromNm: rows.distanceNm[row]!, toNm: rows.distanceNm[row + 1]! };
}

/** By how much a height read at a moment may have been otherwise; 0 where that does not show. */
export function hiddenFeet(rows: ApproachRows, { row, share }: Moment): Feet {
  if (!rows.timed || !(share > 0)) return 0;
  const seconds = (rows.timeMs[row + 1]! - rows.timeMs[row]!) / 1000;
  const strayed = strayedInHeight(seconds, knownAtEnds(rows.verticalFpm, row + 1));
  return strayed >= SPOKEN_FT ? strayed : 0;
}

/** How low a column of heights may have come in a span, silences counted as low as they allow; null without two known rows. */
export const lowestUnseen = (rows: ApproachRows, span: Span, column = rows.altitudeFt): Unseen | null =>
  unseenOf(rows, span, column, (_, seconds, row) =>
    strayedInHeight(seconds, knownAtEnds(rows.verticalFpm, row)),
  );

/**
 * How far below a limit the aircraft may have come unseen in a span; null where that is no lower than was seen.
 * `over`: a moment at which it is to be above still: in a silence it may have been as low as its far end by then.
 */
export function unseenBelow(
  rows: ApproachRows,
  span: Span,
  limit: FeetMsl,
  seen: FeetMsl,
  over: Moment | null = null,
): UnseenRecord | null {
  const found = lowestUnseen(rows, span);
  const silence = over && silenceAt(rows, over);
  const end = silence ? rows.altitudeFt[over.row + 1]! : Number.NaN;
  if (end < Math.min(seen - SPOKEN_FT, found?.low ?? Infinity))
    return { most: limit - end, seconds: silence!.seconds };
  return found && found.low < seen - SPOKEN_FT ? { most: limit - found.low, seconds: found.lowS } : null;
}

/** By how much a needle read between a row and the next may have been otherwise; 0 where that does not show. */
export function hiddenNeedle(
  rows: ApproachRows,
  row: number,
  column = rows.needle,
  stray: NeedleStray = sideways(rows),
): Share {
  const unseen = unseenOf(rows, { start: row, end: Math.min(row + 2, rows.length) }, column, stray);
  const share = unseen ? (unseen.high - unseen.low) / 2 : 0;
  return share >= SPOKEN ? share : 0;
}

/** Silences beside judged rows. `room`: how far it still was to where the exercise begins and ends, NM. */
export function silentEnds(
  rows: ApproachRows,
  { start, end }: Span,
  room: { readonly before: NauticalMiles; readonly after: NauticalMiles },
): SilentEdge[] {
  const edge = (row: number, silent: Seconds | null, miles: NauticalMiles): SilentEdge[] => {
    const seconds = Math.min(silent ?? 0, (miles / Math.max(1, rows.groundSpeedKt[row]!)) * 3600);
    return seconds > 0 ? [{ row, seconds }] : [];
  };
  return [
    ...edge(start, rows.silentBefore(start), room.before),
    ...edge(end - 1, rows.silentBefore(end), room.after),
  ];
}

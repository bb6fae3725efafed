/** Moments of an approach that lie in a silence of the log, and what that may hide of what is read there between two points. */
import type { Span } from "../quantity/span.ts";
import type { Feet, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import {
  knownAtEnds,
  type SilentEdge,
  SPOKEN,
  SPOKEN_FT,
  strayedInHeight,
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

/** As it stands among facts: nothing where the moment was seen. */
export function inSilence(rows: ApproachRows, moment: Moment): { readonly silence?: MomentSilence } {
  const silence = silenceAt(rows, moment);
  return silence ? { silence } : {};
}

/** By how much a height read at a moment may have been otherwise; 0 where that does not show. */
export function hiddenFeet(rows: ApproachRows, { row, share }: Moment): Feet {
  if (!rows.timed || !(share > 0)) return 0;
  const seconds = (rows.timeMs[row + 1]! - rows.timeMs[row]!) / 1000;
  const strayed = strayedInHeight(seconds, knownAtEnds(rows.verticalFpm, row + 1));
  return strayed >= SPOKEN_FT ? strayed : 0;
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

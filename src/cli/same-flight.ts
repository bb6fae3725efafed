/** Whether two files are of one flight: it was flown over the same places at the same times, and not by two people. */
import type { DebriefDocument } from "../index.ts";

/** What a flight is known again by. */
export interface FlightMark {
  readonly startUtc: string | null;
  readonly endUtc: string | null;
  readonly distanceNm: number;
  /** East positive; it changes with the place. Null where no model fits the date. */
  readonly variationDeg: number | null;
  /** Null in debriefs that were made before it was written down. */
  readonly trace: readonly (readonly [latitude: number, longitude: number])[] | null;
}

/** Degrees: what a log may lose when it is written in another format (0.00002° in a thousandth of a minute), many times over. Chosen. */
const SAME_PLACE_DEG = 0.001;
/** Share of the length, and degrees of variation, within which a debrief of before is of the same flight. Chosen. */
const SAME_LENGTH = 0.01;
const SAME_VARIATION_DEG = 0.01;

export const markOf = ({ log, variation }: DebriefDocument): FlightMark => ({
  startUtc: log.startUtc,
  endUtc: log.endUtc,
  distanceNm: log.distanceNm,
  variationDeg: variation?.degrees ?? null,
  trace: log.trace ?? null,
});

const aside = (from: number, to: number): number => Math.abs(((((to - from + 540) % 360) + 360) % 360) - 180);

function isSameTrace(a: NonNullable<FlightMark["trace"]>, b: NonNullable<FlightMark["trace"]>): boolean {
  if (a.length !== b.length) return false;
  return a.every(([latitude, longitude], i) => {
    const [otherLatitude, otherLongitude] = b[i]!;
    return (
      Math.abs(latitude - otherLatitude) <= SAME_PLACE_DEG &&
      aside(longitude, otherLongitude) <= SAME_PLACE_DEG
    );
  });
}

/** Flights without times are told by their places alone. */
export function isSameFlight(a: FlightMark, b: FlightMark): boolean {
  if (a.startUtc !== b.startUtc || a.endUtc !== b.endUtc) return false;
  if (a.trace && b.trace) return isSameTrace(a.trace, b.trace);
  if (a.startUtc === null) return false;
  return (
    Math.abs(a.distanceNm - b.distanceNm) <= SAME_LENGTH * Math.max(a.distanceNm, b.distanceNm) &&
    Math.abs((a.variationDeg ?? 0) - (b.variationDeg ?? 0)) <= SAME_VARIATION_DEG
  );
}

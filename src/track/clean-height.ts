/** Heights that no aircraft has or changes to so fast: the value is set aside, the point stays. */
import { chooseRuns, rowsOfRuns } from "./choose-runs.ts";
import type { CleanFinding } from "./clean-finding.ts";
import { keptRows } from "./rows.ts";
import type { Track } from "./track.ts";

/** Feet. The Dead Sea's shore is near -1,400 ft and a height above the ellipsoid may be 350 ft lower; placeholders are -9999 or so. */
const LOWEST_FT = -2000;
/** Feet. Above all aeroplanes; below the placeholders 99999 m and the like. */
const HIGHEST_FT = 100_000;
/** Feet a minute: an emergency descent is 6,000 to 8,000 (common practice, no source). */
const FASTEST_FPM = 10_000;
/** Error of a height that is no jump, feet: worst-site 95 % vertical of the 2001 GPS SPS standard is 77 m, 253 ft. */
const HEIGHT_ALLOWANCE_FT = 253;
const MINUTES_PER_MS = 1 / 60_000;

/** Heights outside -2,000 to 100,000 ft. */
export function findImpossibleHeights(track: Track, keep: Uint8Array): CleanFinding {
  const rows: number[] = [];
  for (let i = 0; i < track.length; i++) {
    const height = track.altitude[i]!;
    if (keep[i] === 1 && (height < LOWEST_FT || height > HIGHEST_FT)) rows.push(i);
  }
  const facts = { lowestFt: LOWEST_FT, highestFt: HIGHEST_FT };
  return { code: "impossible-height", severity: "warning", rows, dropped: false, facts };
}

/**
 * Heights that differ from the others by more than 10,000 ft/min over the time between plus 253 ft: spikes, a
 * false start. A lasting step between runs of 30 points and more is left alone: which side is true is not known.
 * Times must rise; rows without height are passed over.
 */
export function findHeightJumps(track: Track, keep: Uint8Array): CleanFinding {
  const { altitude, time } = track;
  const rows = keptRows(keep).filter((row) => !Number.isNaN(altitude[row]!));
  const chosen = chooseRuns(
    rows,
    (a, b) =>
      Math.abs(altitude[b]! - altitude[a]!) <=
      FASTEST_FPM * (time[b]! - time[a]!) * MINUTES_PER_MS + HEIGHT_ALLOWANCE_FT,
  );
  const facts = { limitFpm: FASTEST_FPM, allowanceFt: HEIGHT_ALLOWANCE_FT };
  return {
    code: "height-jump",
    severity: "warning",
    rows: rowsOfRuns(rows, chosen, 0),
    dropped: false,
    facts,
  };
}

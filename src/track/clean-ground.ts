/** A receiver that lies still wanders about: the standing before the first and after the last move is left out. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { CleanFinding } from "./clean-finding.ts";
import { keptRows } from "./rows.ts";
import { stepBetween } from "./step.ts";
import type { Track } from "./track.ts";

/** Metres about their mean: what GPS wanders at one place. Worst-site 95 % of the 2001 GPS SPS standard is 36 m; doubled. */
const STANDING_RADIUS_M = 75;
/** Seconds of standing that are kept beside the move: a walking pace needs so long to leave the circle. Tuned, no source. */
const KEPT_S = 30;
/** Seconds: a shorter standing is a stop, not worth leaving out. Tuned, no source. */
const SHORTEST_S = 120;

/** From one end of the log: how many rows lie within the circle about their own running mean. */
function standing(track: Track, rows: ArrayLike<number>): number {
  let latitude = 0;
  let longitude = 0;
  const first = track.longitude[rows[0]!]!;
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k]!;
    // Longitudes are taken from the first one on, so that a stand on the antimeridian has a mean.
    const east = ((track.longitude[row]! - first + 540) % 360) - 180;
    if (k > 0) {
      const away =
        stepBetween(latitude / k, longitude / k, track.latitude[row]!, east) * METRES_PER_NAUTICAL_MILE;
      if (away > STANDING_RADIUS_M) return k;
    }
    latitude += track.latitude[row]!;
    longitude += east;
  }
  return rows.length;
}

/**
 * Rows more than 30 s before the last within, and more than 30 s after the first within, a circle of 75 m in which
 * the aircraft stands for 2 minutes and more before and after its flight. A log that never leaves the circle is left alone. Times must rise.
 */
export function findGroundNoise(track: Track, keep: Uint8Array): CleanFinding {
  const rows = keptRows(keep);
  const { time } = track;
  const out: number[] = [];
  const ahead = standing(track, rows);
  if (ahead < rows.length && rows.length > 0) {
    const left = time[rows[ahead - 1]!]!;
    if (left - time[rows[0]!]! >= SHORTEST_S * 1000) {
      for (let k = 0; k < ahead; k++) if (left - time[rows[k]!]! > KEPT_S * 1000) out.push(rows[k]!);
    }
    const back = rows.slice().reverse();
    const behind = standing(track, back);
    const entered = time[back[behind - 1]!]!;
    if (time[back[0]!]! - entered >= SHORTEST_S * 1000) {
      for (let k = behind - 1; k >= 0; k--) if (time[back[k]!]! - entered > KEPT_S * 1000) out.push(back[k]!);
    }
  }
  const facts = { radiusM: STANDING_RADIUS_M, keptS: KEPT_S };
  return { code: "ground-noise", severity: "note", rows: [...new Set(out)], dropped: true, facts };
}

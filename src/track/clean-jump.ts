/** Jumps in place that no aircraft makes: single wrong points are left out, lasting steps are kept apart. */

import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { HOUR_MS } from "../quantity/time.ts";
import { chooseRuns, rowsOfRuns } from "./choose-runs.ts";
import type { CleanFinding } from "./clean-finding.ts";
import { keptRows } from "./rows.ts";
import { stepBetween } from "./step.ts";
import type { Track } from "./track.ts";

/** Knots. Above what light aircraft fly, with a tailwind; a faster log raises it by its own speed. Tuned, no source. */
const LEAST_LIMIT_KT = 250;
/** Times the median speed of the moving log: a jet's own speed is no jump. Tuned on simulated and real flights. */
const LIMIT_OF_MEDIAN = 2.5;
/** Below this a step is standing or taxiing and says nothing of the flight's speed. Knots, common practice, no source. */
const MOVING_KT = 40;
/** Error of a position that is no jump, metres: worst-site 95 % horizontal of the 2001 GPS SPS standard is 36 m; rounded up. */
const POSITION_ALLOWANCE_M = 50;

const ALLOWANCE_NM = POSITION_ALLOWANCE_M / METRES_PER_NAUTICAL_MILE;

const step = ({ latitude, longitude }: Track, a: number, b: number): number =>
  stepBetween(latitude[a]!, longitude[a]!, latitude[b]!, longitude[b]!);

/** Knots: the speed above which a step between points counts as impossible in this log. */
function jumpLimit(track: Track, rows: Int32Array): number {
  const speeds: number[] = [];
  for (let k = 1; k < rows.length; k++) {
    const [a, b] = [rows[k - 1]!, rows[k]!];
    const speed = step(track, a, b) / ((track.time[b]! - track.time[a]!) / HOUR_MS);
    if (speed > MOVING_KT && speed < Number.POSITIVE_INFINITY) speeds.push(speed);
  }
  speeds.sort((a, b) => a - b);
  const median = speeds[speeds.length >> 1] ?? 0;
  return Math.max(LEAST_LIMIT_KT, LIMIT_OF_MEDIAN * median);
}

/**
 * A step is impossible when it is longer than the limit's speed over its time plus 50 m. A spike is left out
 * (`impossible-jump`), a false start before the first good fix too, while a lasting step between two runs of
 * 30 points and more keeps both, with a break between them (`position-step`). Times must rise.
 */
export function findJumps(
  track: Track,
  keep: Uint8Array,
): { readonly jumps: CleanFinding; readonly steps: CleanFinding } {
  const rows = keptRows(keep);
  const limit = jumpLimit(track, rows);
  const chosen = chooseRuns(
    rows,
    (a, b) => step(track, a, b) <= (limit * (track.time[b]! - track.time[a]!)) / HOUR_MS + ALLOWANCE_NM,
  );
  const facts = { limitKt: Math.round(limit), allowanceM: POSITION_ALLOWANCE_M };
  const stepped = chosen.starts.filter((_, run) => chosen.kept[run] === 1 && chosen.stepBefore[run] === 1);
  return {
    jumps: {
      code: "impossible-jump",
      severity: "warning",
      rows: rowsOfRuns(rows, chosen, 0),
      dropped: true,
      facts,
    },
    steps: {
      code: "position-step",
      severity: "warning",
      rows: stepped.map((start) => rows[start]!),
      dropped: false,
      facts,
    },
  };
}

/** Gaps in the recording: noted, nothing is left out. */
import { silenceLimit } from "../quantity/silence.ts";
import type { CleanFinding } from "./clean-finding.ts";
import type { Track } from "./track.ts";

/** Steps between kept points longer than 15 s and five times the median interval; a row is the first after its gap. */
export function findGaps(track: Track, keep: Uint8Array): CleanFinding {
  const steps: number[] = [];
  const rows: number[] = [];
  let last = -1;
  for (let i = 0; i < track.length; i++) {
    if (keep[i] !== 1) continue;
    if (last >= 0) {
      steps.push((track.time[i]! - track.time[last]!) / 1000);
      rows.push(i);
    }
    last = i;
  }
  const limit = silenceLimit(Float64Array.from(steps));
  const gaps = rows.filter((_, k) => steps[k]! > limit);
  const longest = steps.reduce((a, b) => Math.max(a, b), 0);
  return {
    code: "gap-in-log",
    severity: "note",
    rows: gaps,
    dropped: false,
    facts: { limitS: limit, longestS: gaps.length > 0 ? longest : 0 },
  };
}

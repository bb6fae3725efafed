/** Leaves out the points that cannot be true, says why, and never moves one that can. */
import type { Issue } from "../quantity/issue.ts";
import { type CleanFinding, issueOf } from "./clean-finding.ts";
import { findGaps } from "./clean-gap.ts";
import { findJumps } from "./clean-jump.ts";
import { findOutOfRange, findZeroZero } from "./clean-place.ts";
import { findDuplicateTime, findTimeGoingBack, findUntimed, TIMED_SHARE, timingOf } from "./clean-time.ts";
import { keepRows, withColumn } from "./rows.ts";
import type { Track } from "./track.ts";

export interface CleanedTrack {
  readonly track: Track;
  /** One a code, worst first; `where.point` is the row in the track as it was given. */
  readonly issues: readonly Issue[];
  /** How many points each code left out. */
  readonly dropped: Readonly<Record<string, number>>;
}

/**
 * The points of a log that can be true, in recorded order, values untouched.
 * Rules, in this order (threshold and reason stand at each): `out-of-range`, `zero-zero`, `point-without-time`
 * (only in a log of which at least a tenth is timed), `time-going-back`, `duplicate-time`, `impossible-jump`,
 * `position-step` (kept, with a new segment), `gap-in-log` (kept).
 * A log without times passes as geometry: only the first two rules apply, with the note `no-times`. A log with
 * too few times is one too (`too-few-times`): its `time` column is then all NaN.
 * `no-usable-points` where nothing is left. The track itself is never changed; the same one comes back where
 * nothing was found.
 */
export function cleanTrack(track: Track): CleanedTrack {
  const keep = new Uint8Array(track.length).fill(1);
  const findings: CleanFinding[] = [];
  const apply = (finding: CleanFinding): void => {
    if (finding.rows.length === 0) return;
    findings.push(finding);
    if (finding.dropped) for (const row of finding.rows) keep[row] = 0;
  };
  let timed = track;
  apply(findOutOfRange(track, keep));
  apply(findZeroZero(track, keep));
  const timing = timingOf(track);
  if (timing === "untimed") {
    const some = rowsWhere(track, (row) => !Number.isNaN(track.time[row]!));
    if (some.length > 0) timed = withColumn(track, "time", new Float64Array(track.length).fill(Number.NaN));
    const all = rowsWhere(track, (row) => Number.isNaN(track.time[row]!));
    if (some.length === 0)
      apply({ code: "no-times", severity: "note", rows: all, dropped: false, facts: {} });
    else {
      const facts = { timedShare: TIMED_SHARE };
      apply({ code: "too-few-times", severity: "warning", rows: some, dropped: false, facts });
    }
  } else {
    if (timing === "partly") apply(findUntimed(track, keep));
    apply(findTimeGoingBack(track, keep));
    apply(findDuplicateTime(track, keep));
    const { jumps, steps } = findJumps(track, keep);
    apply(jumps);
    apply(steps);
    timed = breakBefore(timed, steps.rows);
    apply(findGaps(track, keep));
  }
  const cleaned = keepRows(timed, keep);
  const dropped: Record<string, number> = {};
  for (const { code, rows, dropped: out } of findings) if (out) dropped[code] = rows.length;
  if (cleaned.length === 0) {
    findings.push({
      code: "no-usable-points",
      severity: "error",
      rows: [],
      dropped: false,
      facts: { of: track.length },
    });
  }
  const rank = { error: 0, warning: 1, note: 2 };
  findings.sort((a, b) => rank[a.severity] - rank[b.severity]);
  return { track: cleaned, issues: findings.map((finding) => issueOf(finding, track)), dropped };
}

function rowsWhere(track: Track, test: (row: number) => boolean): number[] {
  const rows: number[] = [];
  for (let row = 0; row < track.length; row++) if (test(row)) rows.push(row);
  return rows;
}

/** The track with a new segment at each of these rows. */
function breakBefore(track: Track, rows: readonly number[]): Track {
  if (rows.length === 0) return track;
  const segment = track.segment.slice();
  let added = 0;
  for (let i = 0; i < track.length; i++) {
    if (i === rows[added]) added++;
    segment[i]! += added;
  }
  return withColumn(track, "segment", segment);
}

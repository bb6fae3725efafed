/** Leaves out the points that cannot be true, says why, and never moves one that can. */
import type { Issue } from "../quantity/issue.ts";
import { type CleanFinding, issueOf } from "./clean-finding.ts";
import { findFrozen } from "./clean-frozen.ts";
import { findGaps } from "./clean-gap.ts";
import { findGroundNoise } from "./clean-ground.ts";
import { findHeightJumps, findImpossibleHeights } from "./clean-height.ts";
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
 * (only in a log of which at least a tenth is timed), `time-going-back`, `duplicate-time`, `frozen-position`,
 * `impossible-jump`, `position-step` (kept, with a new segment), `ground-noise`, `impossible-height` and
 * `height-jump` (kept, the height unknown), `gap-in-log` (kept).
 * A log without times passes as geometry: only the rules of place and `impossible-height` apply, with the note
 * `no-times`. A log with too few times is one too (`too-few-times`): its `time` column is then all NaN.
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
  apply(findOutOfRange(track, keep));
  apply(findZeroZero(track, keep));
  const timing = timingOf(track);
  let kept = track;
  if (timing === "untimed") {
    const timed = rowsWhere(track, (row) => !Number.isNaN(track.time[row]!));
    if (timed.length > 0) kept = withColumn(kept, "time", new Float64Array(track.length).fill(Number.NaN));
    apply(untimedNote(track, timed));
  } else {
    if (timing === "partly") apply(findUntimed(track, keep));
    apply(findTimeGoingBack(track, keep));
    apply(findDuplicateTime(track, keep));
    apply(findFrozen(track, keep)); // before the jumps: catching up after a freeze looks like one
    const { jumps, steps } = findJumps(track, keep);
    apply(jumps);
    apply(steps);
    kept = breakBefore(kept, steps.rows);
    apply(findGroundNoise(track, keep));
    apply(findGaps(track, keep));
  }
  const impossible = findImpossibleHeights(track, keep);
  apply(impossible);
  kept = withoutHeights(kept, impossible.rows);
  if (timing !== "untimed") {
    const jumps = findHeightJumps(kept, keep);
    apply(jumps);
    kept = withoutHeights(kept, jumps.rows);
  }
  const cleaned = keepRows(kept, keep);
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

function untimedNote(track: Track, timed: readonly number[]): CleanFinding {
  const facts = { timedShare: TIMED_SHARE };
  if (timed.length > 0)
    return { code: "too-few-times", severity: "warning", rows: timed, dropped: false, facts };
  return {
    code: "no-times",
    severity: "note",
    rows: rowsWhere(track, () => true),
    dropped: false,
    facts: {},
  };
}

function withoutHeights(track: Track, rows: readonly number[]): Track {
  if (rows.length === 0) return track;
  const altitude = track.altitude.slice();
  for (const row of rows) altitude[row] = Number.NaN;
  return withColumn(track, "altitude", altitude);
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

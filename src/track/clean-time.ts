/** Points without a time, with a time that goes back, or with the time of the point before. */
import type { CleanFinding } from "./clean-finding.ts";
import type { Track } from "./track.ts";

/**
 * A log counts as timed when at least this share of its points has a time. Below it the few times are set aside
 * and the log is read as geometry: dropping nine points in ten would tell less. Tuned by judgement, no source.
 */
export const TIMED_SHARE = 0.1;

export type Timing = "timed" | "partly" | "untimed";

export function timingOf(track: Track): Timing {
  let timed = 0;
  for (let i = 0; i < track.length; i++) if (!Number.isNaN(track.time[i]!)) timed++;
  if (timed === track.length) return "timed";
  return timed >= 2 && timed >= TIMED_SHARE * track.length ? "partly" : "untimed";
}

/** In a partly timed log: the points that no smoother could place in time. */
export function findUntimed(track: Track, keep: Uint8Array): CleanFinding {
  const rows: number[] = [];
  for (let i = 0; i < track.length; i++) if (keep[i] === 1 && Number.isNaN(track.time[i]!)) rows.push(i);
  return {
    code: "point-without-time",
    severity: "warning",
    rows,
    dropped: true,
    facts: { timedShare: TIMED_SHARE },
  };
}

/**
 * The fewest points whose going makes the times never fall: those outside a longest run of never falling times.
 * So one point with a wrong date, early or late, costs itself and not the rest of the flight.
 * Method: C. Schensted, "Longest increasing and decreasing subsequences", Canad. J. Math. 13 (1961), by patience
 * sorting in n log n.
 */
export function findTimeGoingBack(track: Track, keep: Uint8Array): CleanFinding {
  const { time, length } = track;
  const rows: number[] = [];
  const facts = { rule: "time before that of an earlier point" };
  const finding = { code: "time-going-back", severity: "warning", rows, dropped: true, facts } as const;
  let last = Number.NEGATIVE_INFINITY;
  let falls = false;
  for (let i = 0; i < length && !falls; i++) {
    if (keep[i] !== 1) continue;
    falls = time[i]! < last;
    last = time[i]!;
  }
  if (!falls) return finding;

  /** tails[k]: the row that ends the best run of k + 1 points, the one with the smallest last time. */
  const tails = new Int32Array(length);
  const before = new Int32Array(length).fill(-1);
  let size = 0;
  for (let i = 0; i < length; i++) {
    if (keep[i] !== 1) continue;
    let low = 0;
    let high = size;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (time[tails[middle]!]! <= time[i]!) low = middle + 1;
      else high = middle;
    }
    before[i] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = i;
    if (low === size) size++;
  }
  const inRun = new Uint8Array(length);
  for (let i = size > 0 ? tails[size - 1]! : -1; i >= 0; i = before[i]!) inRun[i] = 1;
  for (let i = 0; i < length; i++) if (keep[i] === 1 && inRun[i] === 0) rows.push(i);
  return finding;
}

/** Points with exactly the time of the kept point before: the first stays. Times must not fall. */
export function findDuplicateTime(track: Track, keep: Uint8Array): CleanFinding {
  const rows: number[] = [];
  let last = Number.NaN;
  for (let i = 0; i < track.length; i++) {
    if (keep[i] !== 1) continue;
    if (track.time[i] === last) rows.push(i);
    else last = track.time[i]!;
  }
  return { code: "duplicate-time", severity: "note", rows, dropped: true, facts: { differenceS: 0 } };
}

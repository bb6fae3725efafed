/** Jumps that no aircraft makes: single wrong points are left out, lasting steps are kept apart. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { CleanFinding } from "./clean-finding.ts";
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
/** A run of at least this many points is a place the receiver believed in: it is kept, apart. Tuned, no source. */
const RUN_KEPT = 30;
/** Earlier runs looked at for a link back. */
const LOOK_BACK = 64;

const ALLOWANCE_NM = POSITION_ALLOWANCE_M / METRES_PER_NAUTICAL_MILE;
const HOURS_PER_MS = 1 / 3_600_000;

/** Knots: the speed above which a step between points counts as impossible in this log. */
export function jumpLimit(track: Track, rows: Int32Array): number {
  const speeds: number[] = [];
  for (let k = 1; k < rows.length; k++) {
    const [a, b] = [rows[k - 1]!, rows[k]!];
    const hours = (track.time[b]! - track.time[a]!) * HOURS_PER_MS;
    const step = stepBetween(
      track.latitude[a]!,
      track.longitude[a]!,
      track.latitude[b]!,
      track.longitude[b]!,
    );
    const speed = step / hours;
    if (speed > MOVING_KT && speed < Number.POSITIVE_INFINITY) speeds.push(speed);
  }
  speeds.sort((a, b) => a - b);
  const median = speeds[speeds.length >> 1] ?? 0;
  return Math.max(LEAST_LIMIT_KT, LIMIT_OF_MEDIAN * median);
}

/**
 * Cuts the kept rows at every impossible step into runs, then chooses the runs that keep the most points, where
 * following a run by one that cannot be reached from it costs `RUN_KEPT` points. So a spike is left out
 * (`impossible-jump`), a false start before the first good fix too, while a lasting step between two long runs
 * keeps both, with a break between them (`position-step`). Times must rise.
 */
export function findJumps(
  track: Track,
  keep: Uint8Array,
): { readonly jumps: CleanFinding; readonly steps: CleanFinding } {
  const rows = Int32Array.from({ length: count(keep) });
  for (let i = 0, k = 0; i < track.length; i++) if (keep[i] === 1) rows[k++] = i;
  const limit = jumpLimit(track, rows);
  const reaches = (a: number, b: number): boolean => {
    const hours = (track.time[b]! - track.time[a]!) * HOURS_PER_MS;
    const step = stepBetween(
      track.latitude[a]!,
      track.longitude[a]!,
      track.latitude[b]!,
      track.longitude[b]!,
    );
    return step <= limit * hours + ALLOWANCE_NM;
  };
  const starts = [0];
  for (let k = 1; k < rows.length; k++) if (!reaches(rows[k - 1]!, rows[k]!)) starts.push(k);
  const facts = { limitKt: Math.round(limit), allowanceM: POSITION_ALLOWANCE_M };
  const dropped: number[] = [];
  const stepped: number[] = [];
  if (starts.length > 1) {
    const chosen = chooseRuns(starts, rows, reaches);
    starts.forEach((start, run) => {
      if (chosen.kept[run] === 1) {
        if (chosen.stepBefore[run] === 1) stepped.push(rows[start]!);
      } else for (let k = start; k < (starts[run + 1] ?? rows.length); k++) dropped.push(rows[k]!);
    });
  }
  return {
    jumps: { code: "impossible-jump", severity: "warning", rows: dropped, dropped: true, facts },
    steps: { code: "position-step", severity: "warning", rows: stepped, dropped: false, facts },
  };
}

function chooseRuns(
  starts: readonly number[],
  rows: Int32Array,
  reaches: (a: number, b: number) => boolean,
): { readonly kept: Uint8Array; readonly stepBefore: Uint8Array } {
  const n = starts.length;
  const best = new Float64Array(n);
  const before = new Int32Array(n).fill(-1);
  const kept = new Uint8Array(n);
  const stepBefore = new Uint8Array(n);
  let bestRun = -1; // the best of all runs so far
  for (let run = 0; run < n; run++) {
    const start = starts[run]!;
    const length = (starts[run + 1] ?? rows.length) - start;
    let gain = 0;
    if (bestRun >= 0 && best[bestRun]! - RUN_KEPT > 0) {
      gain = best[bestRun]! - RUN_KEPT;
      before[run] = bestRun;
      stepBefore[run] = 1;
    }
    for (let other = run - 1; other >= Math.max(0, run - LOOK_BACK); other--) {
      if (best[other]! > gain && reaches(rows[starts[other + 1]! - 1]!, rows[start]!)) {
        gain = best[other]!;
        before[run] = other;
        stepBefore[run] = 0;
      }
    }
    best[run] = gain + length;
    if (bestRun < 0 || best[run]! > best[bestRun]!) bestRun = run;
  }
  for (let run = bestRun; run >= 0; run = before[run]!) kept[run] = 1;
  return { kept, stepBefore };
}

function count(keep: Uint8Array): number {
  let n = 0;
  for (const k of keep) n += k;
  return n;
}

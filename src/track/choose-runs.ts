/** Of the runs that a column breaks into, the ones to believe: those that together keep the most points. */

/** A run of at least this many points is believed though nothing links it to the others. Tuned, no source. */
const RUN_KEPT = 30;
/** Earlier runs looked at for a link back. */
const LOOK_BACK = 64;

export interface ChosenRuns {
  /** Positions in `rows` at which a run begins. */
  readonly starts: readonly number[];
  /** 1 for a run that is kept. */
  readonly kept: Uint8Array;
  /** 1 for a kept run that cannot be reached from the kept run before. */
  readonly stepBefore: Uint8Array;
}

/**
 * Cuts `rows` wherever `reaches` denies the step from one to the next, and chooses runs so that the points kept
 * are most, where following a run by one that it does not reach costs `RUN_KEPT` points. A spike loses itself;
 * two long runs with a step between them both stay.
 * Method: dynamic programming over runs, n log-free: n times at most 64 links.
 */
export function chooseRuns(rows: Int32Array, reaches: (from: number, to: number) => boolean): ChosenRuns {
  const starts = rows.length > 0 ? [0] : [];
  for (let k = 1; k < rows.length; k++) if (!reaches(rows[k - 1]!, rows[k]!)) starts.push(k);
  const n = starts.length;
  const best = new Float64Array(n);
  const before = new Int32Array(n).fill(-1);
  const kept = new Uint8Array(n);
  const stepBefore = new Uint8Array(n);
  let bestRun = -1; // the best of all so far
  for (let run = 0; run < n; run++) {
    const start = starts[run]!;
    const length = (starts[run + 1] ?? rows.length) - start;
    let gain = 0;
    if (bestRun >= 0 && best[bestRun]! > RUN_KEPT) {
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
  return { starts, kept, stepBefore };
}

/** The rows of each run in turn that is (or is not) kept. */
export function rowsOfRuns(rows: Int32Array, chosen: ChosenRuns, kept: 0 | 1): number[] {
  const { starts } = chosen;
  return starts.flatMap((start, run) =>
    chosen.kept[run] === kept ? [...rows.subarray(start, starts[run + 1] ?? rows.length)] : [],
  );
}

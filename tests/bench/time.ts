/** The best of several runs: what the code takes when nothing else wants the machine. */
export interface Line {
  readonly text: string;
  /** False fails the run. */
  readonly ok?: boolean;
}

/** Seconds of the quickest of so many runs, after one that does not count. */
export function bestOf(runs: number, work: () => void): number {
  work();
  let best = Infinity;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    best = Math.min(best, (performance.now() - start) / 1000);
  }
  return best;
}

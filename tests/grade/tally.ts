/** Verdicts counted: how many were given, wrong, and not given. */
import type { Verdict } from "../../src/grade/verdict.ts";
import type { Limit } from "../../src/standard/test-standard.ts";

export interface Tally {
  given: number;
  wrong: number;
  cannotTell: number;
}
export type Tallies = Record<string, Tally>;

/** A limit within half of the true value to both sides of it, evenly spread over the flights. */
export const around = (truth: number, k: number): Limit<number> => ({
  limit: (0.5 + ((k * 0.6180339887) % 1)) * Math.abs(truth),
  edge: "within",
  citation: "drawn",
});

export function tell(tallies: Tallies, verdict: Verdict | undefined, truth: number, sized = true): void {
  if (!verdict) throw new Error("a criterion is missing");
  const tally = tallies[verdict.criterion] ?? { given: 0, wrong: 0, cannotTell: 0 };
  tallies[verdict.criterion] = tally;
  if (verdict.verdict === "cannot tell") tally.cannotTell++;
  else {
    tally.given++;
    if ((verdict.verdict === "met") !== (sized ? Math.abs(truth) : truth) <= verdict.limit!) tally.wrong++;
  }
}

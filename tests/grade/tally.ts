/** Verdicts counted: how many were given, wrong, and not given, and how large the doubt was. */
import type { Verdict } from "../../src/grade/verdict.ts";
import type { Limit } from "../../src/standard/test-standard.ts";

export interface Tally {
  given: number;
  wrong: number;
  cannotTell: number;
  /** Of those not given: the reasons, and how often. */
  readonly reasons: Record<string, number>;
  /** Doubt over limit of each that has one, 95 %. */
  readonly doubts: number[];
}
export type Tallies = Record<string, Tally>;

export const noTally = (): Tally => ({ given: 0, wrong: 0, cannotTell: 0, reasons: {}, doubts: [] });

/** A limit within half of the true value to both sides of it, evenly spread over the flights. */
export const around = (truth: number, k: number): Limit<number> => ({
  limit: (0.5 + ((k * 0.6180339887) % 1)) * Math.abs(truth),
  edge: "within",
  citation: "drawn",
});

export function tell(tallies: Tallies, verdict: Verdict | undefined, truth: number, sized = true): void {
  if (!verdict) throw new Error("a criterion is missing");
  tallies[verdict.criterion] ??= noTally();
  const tally = tallies[verdict.criterion]!;
  const { doubt95, limit, reason } = verdict;
  if (doubt95 !== null && limit) tally.doubts.push(doubt95 / Math.abs(limit));
  if (verdict.verdict === "cannot tell") {
    tally.cannotTell++;
    if (reason !== null) tally.reasons[reason] = (tally.reasons[reason] ?? 0) + 1;
  } else {
    tally.given++;
    if ((verdict.verdict === "met") !== (sized ? Math.abs(truth) : truth) <= limit!) tally.wrong++;
  }
}

/** The same criteria counted on other flights, together. */
export function joined(parts: readonly Tallies[]): Tallies {
  const all: Tallies = {};
  for (const part of parts)
    for (const [id, { given, wrong, cannotTell, reasons, doubts }] of Object.entries(part)) {
      all[id] ??= noTally();
      const tally = all[id]!;
      tally.given += given;
      tally.wrong += wrong;
      tally.cannotTell += cannotTell;
      tally.doubts.push(...doubts);
      for (const [reason, n] of Object.entries(reasons))
        tally.reasons[reason] = (tally.reasons[reason] ?? 0) + n;
    }
  return all;
}

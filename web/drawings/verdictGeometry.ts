/** Where verdicts stand on the way from 0 to twice their own limit, whatever their unit. */
import type { Verdict } from "./contract.ts";

/** The line ends at twice the limit; a value past it stands at its end. */
export const MOST_LIMITS = 2;

export interface VerdictPlace {
  /** Of the limit, at most `MOST_LIMITS`. */
  readonly at: number;
  readonly whisker: readonly [number, number];
  /** The value lies past the end of the line: how many limits it is. */
  readonly past: number | null;
}

/** Null where there is no value, so no dot. Where nothing at all is allowed, as below a minimum, half of the line is twice the doubt. */
export function verdictPlace({ value: size, toward, doubt95, limit }: Verdict): VerdictPlace | null {
  const value = size === null ? null : (toward ?? size);
  if (value === null || limit === null || limit < 0) return null;
  const one = limit || 2 * (doubt95 ?? 0) || Math.abs(value) || 1;
  const share = (limit === 0 ? 1 : 0) + value / one;
  const doubt = (doubt95 ?? 0) / one;
  const kept = (x: number) => Math.min(MOST_LIMITS, Math.max(0, x));
  return {
    at: kept(share),
    whisker: [kept(share - doubt), kept(share + doubt)],
    past: limit > 0 && share > MOST_LIMITS ? share : null,
  };
}

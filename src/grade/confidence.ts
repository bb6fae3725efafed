/** How sure it is that a value lies within its limit. */

import type { Share } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";

/**
 * The probability that a size lies within a limit, its error being normal. An exact value is within at its limit:
 * a text that says "less than" differs from one that says "within" only at that single point, which no measured value hits.
 */
export function confidenceWithin(value: number, doubt95: number, limit: number): Share {
  if (!(doubt95 > 0)) return value <= limit ? 1 : 0;
  return normalCdf((limit - value) / (doubt95 / Z95));
}

/** Abramowitz, Stegun, *Handbook of Mathematical Functions* (1964), 26.2.17: error under 7.5e-8. */
export function normalCdf(z: number): Share {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return z >= 0 ? 1 - tail : tail;
}

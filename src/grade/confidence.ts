/** How sure it is that a value lies within its limit. */
import { normalCdf } from "../quantity/normal.ts";
import type { Share } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";

/**
 * The probability that a value lies below a limit that only one side can pass, its error being normal. An exact value
 * is within at its limit: a text that says "less than" differs from one that says "within" only at that single point,
 * which no measured value hits.
 */
export function confidenceBelow(value: number, doubt95: number, limit: number): Share {
  if (!(doubt95 > 0)) return value <= limit ? 1 : 0;
  return normalCdf((limit - value) / (doubt95 / Z95));
}

/** The same of a limit to both sides, -limit to +limit: a large doubt reaches past either. */
export function confidenceWithin(value: number, doubt95: number, limit: number): Share {
  const size = Math.abs(value);
  if (!(doubt95 > 0)) return size <= limit ? 1 : 0;
  return confidenceBelow(size, doubt95, limit) - confidenceBelow(size, doubt95, -limit);
}

/** How sure it is that a value lies within its limit. */
import { normalCdf } from "../quantity/normal.ts";
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

/** Student's distribution with whole degrees of freedom: how far a mean of few flights may stray. */
import type { Share } from "../quantity/units.ts";

/**
 * The probability that a deviate is at most so far from 0 to either side.
 * Source: M. Abramowitz, I. A. Stegun, *Handbook of Mathematical Functions* (1964), 26.7.3 and 26.7.4: exact.
 */
export function studentWithin(t: number, degreesOfFreedom: number): Share {
  if (!(Number.isInteger(degreesOfFreedom) && degreesOfFreedom > 0))
    throw new RangeError(`invalid degrees of freedom: ${degreesOfFreedom}; not a whole number above 0`);
  if (t === Number.POSITIVE_INFINITY) return 1;
  const theta = Math.atan(t / Math.sqrt(degreesOfFreedom));
  const sine = Math.sin(theta);
  const square = Math.cos(theta) ** 2;
  const odd = degreesOfFreedom % 2;
  let term = odd ? Math.cos(theta) : 1;
  let sum = degreesOfFreedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k < degreesOfFreedom; k += 2) {
    term *= ((k - 1) / k) * square;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + sine * sum) : sine * sum;
}

/** The size that a deviate exceeds to one side or the other with this probability, as 4.303 for 0.05 and 2 degrees of freedom. */
export function studentBeyond(probability: Share, degreesOfFreedom: number): number {
  let low = 0;
  let high = 1;
  while (studentWithin(high, degreesOfFreedom) < 1 - probability) high *= 2;
  while (high - low > 1e-9 * high) {
    const middle = (low + high) / 2;
    if (studentWithin(middle, degreesOfFreedom) < 1 - probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

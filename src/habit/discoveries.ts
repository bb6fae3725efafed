/** Many questions asked of the same flights: how many of the answers may be chance. */
import type { Share } from "../quantity/units.ts";

/**
 * Each p-value as the smallest share of false discoveries at which its question would be answered "yes".
 * Source: Y. Benjamini, Y. Hochberg, *Controlling the False Discovery Rate*, J. R. Statist. Soc. B 57 (1995) 289-300.
 */
export function falseDiscoveryShares(p: readonly Share[]): Share[] {
  const order = p.map((_, i) => i).sort((a, b) => p[b]! - p[a]!);
  const shares = new Array<Share>(p.length);
  let least = 1;
  order.forEach((i, k) => {
    least = Math.min(least, (p[i]! * p.length) / (p.length - k));
    shares[i] = least;
  });
  return shares;
}

/**
 * Height lost for a moment is speed won: V dV = -g dh, the sum of both energies being kept while power and drag balance.
 *
 * On a straight such a change of airspeed is seen in the ground speed. In a turn it passes for wind, so there the
 * airspeed is put back to what it was at the height of the turn's own steady climb or descent.
 */
import { METRES_PER_FOOT, METRES_PER_SECOND_PER_KNOT, STANDARD_GRAVITY } from "../quantity/factor.ts";
import type { Feet } from "../quantity/units.ts";
import type { Facts } from "./facts.ts";

/** Knots of airspeed times knots won with each foot lost. */
const SQUARE_KNOTS_PER_FOOT = (STANDARD_GRAVITY * METRES_PER_FOOT) / METRES_PER_SECOND_PER_KNOT ** 2;
/**
 * Less than this at 100 kt is hardly believed: 2.5 times a receiver's slow error, 5 m as simulated. In proportion less
 * for the faster, since the same error of pitch takes them farther from their height. Chosen.
 */
const RECEIVER: Feet = 40;
/** What power and drag make of it meanwhile, as a share (standard deviation). Chosen. */
const DOUBT = 0.2;

/** Corrects the facts of one turn, from `first` to the last there is; nothing where heights are unknown. */
export function putBackExchange(facts: Facts, first: number): void {
  const { altitude, seconds, east, north, excess, noise } = facts;
  const last = facts.count - 1;
  const seen = last + 1 - first;
  if (seen < 3) return;
  let speed = 0;
  for (let i = first; i <= last; i++) speed += Math.hypot(east[i]!, north[i]!) / seen;
  const limit = (RECEIVER * 100) / speed;
  const slope = (altitude[last]! - altitude[first]!) / (seconds[last]! - seconds[first]!);
  for (let i = first + 1; i < last; i++) {
    const above = altitude[i]! - altitude[first]! - slope * (seconds[i]! - seconds[first]!);
    if (Number.isNaN(above)) continue;
    const believed = above ** 3 / (above ** 2 + limit ** 2);
    const lost = (SQUARE_KNOTS_PER_FOOT / speed) * believed;
    excess[i] = excess[i]! + lost;
    noise[i] = noise[i]! + (DOUBT * lost) ** 2;
  }
}

/** The arc that leads onto a final. */
import { direction } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import type { Arc } from "./approach-step.ts";
import type { Sight } from "./sight.ts";
import { offset } from "./step.ts";

/** The turn off an arc is led by this, metres: the radius of a turn at 3 degrees per second. */
const LEAD = 950;

/** Round a station at a distance, until the final is a turn's radius away. */
export function* roundToFinal(
  { centre, radius, turns }: Arc,
  a: Aircraft,
  see: () => Sight,
): Generator<TurnDegrees, void> {
  const right = turns === "right" ? 1 : -1;
  for (let sight = see(); ; sight = see()) {
    // a final that runs square to the arc is led by the radius of the turn
    if (Math.abs(sight.across) < LEAD) return;
    const from = offset(centre, a.position);
    const out = from.distance - radius * METRES_PER_NAUTICAL_MILE;
    const tangent = direction(from.azimuthAtEnd + right * 90);
    const back = Math.max(-30, Math.min(30, (Math.atan(out / 1500) * DEGREES_PER_RADIAN) / 1.5));
    const wanted = tangent + right * back;
    yield unwrap(a.heading, wanted + neededCorrection(a, direction(wanted)));
  }
}

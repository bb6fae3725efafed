/** Where a published hold was flown: of the holds found, the one about its fix on its inbound course. */
import { inverse } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, NauticalMiles, TrueDegrees } from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { bridged } from "./bridged.ts";
import { findHolds } from "./find.ts";
import type { FoundHold } from "./found.ts";

export interface PublishedHold {
  readonly fix: Position;
  readonly inbound: TrueDegrees;
  readonly turns: TurnSide;
}

/** Farther off than this it is another hold. Chosen: a fix flown a mile off is found, the next one is not taken for it. */
const FIX_OFF: NauticalMiles = 1.5;
const COURSE_OFF: AngleSize = 40;

/** The nearest to the published fix; null where the hold was not flown. */
export function holdAgainst(
  motion: Motion,
  legs: readonly Leg[],
  published: PublishedHold,
): FoundHold | null {
  type Seen = Pick<FoundHold, "fix" | "inbound">;
  const off = ({ fix }: Seen) => inverse(published.fix, fix).distance / METRES_PER_NAUTICAL_MILE;
  const meant = (hold: Seen) =>
    off(hold) <= FIX_OFF && Math.abs(turnFrom(published.inbound, hold.inbound)) <= COURSE_OFF;
  const hints = { fixes: [published.fix], meant };
  let holds = findHolds(motion, legs, hints).filter(meant);
  const seen = holds.length === 0 ? bridged(motion, legs) : null;
  if (seen) holds = findHolds(seen.motion, seen.legs, hints).filter(meant);
  return holds.sort((a, b) => off(a) - off(b))[0] ?? null;
}

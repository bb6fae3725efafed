/** How far a leg was from the time or distance given, on the leg that the standard times. */
import { METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { LEG_TIME } from "../standard/tolerance.ts";
import { isSolved } from "./asked.ts";
import type { HoldFacts, HoldLap } from "./facts.ts";

/** What may have been read where the outbound leg ended: from the distance along the course to the slant range of a station at the fix. */
function distanceRead({ outbound, altitude }: Omit<HoldLap, "legOff">): [NauticalMiles, NauticalMiles] {
  const height = ((altitude?.meanFt ?? 0) * METRES_PER_FOOT) / METRES_PER_NAUTICAL_MILE;
  return [Math.abs(outbound.endAlongNm), Math.hypot(outbound.endDistanceNm, height)];
}

/**
 * Too long positive. The first leg outbound is flown for the time given, to learn from: either that or the leg inbound
 * is right. Null where the leg was not flown to its end, and where in the wind of the hold no leg outbound makes one inbound of that time.
 */
export function legOffOf(
  { leg, timing, solved }: Pick<HoldFacts, "leg" | "timing" | "solved">,
  lap: Omit<HoldLap, "legOff">,
  index: number,
): HoldLap["legOff"] {
  const { outbound, inbound } = lap;
  if (leg.by === "distance") {
    const [least, most] = distanceRead(lap);
    const offNm = leg.distanceNm < least ? least - leg.distanceNm : Math.min(0, most - leg.distanceNm);
    return { leg: "outbound", seconds: null, distanceNm: offNm };
  }
  const off = (seconds: Seconds) => seconds - leg.seconds;
  const outboundOff = off(outbound.seconds);
  if (timing === "icao") return { leg: "outbound", seconds: outboundOff, distanceNm: null };
  if (!inbound || (solved && !isSolved(solved))) return null;
  const inboundOff = off(inbound.seconds);
  const learns = index === 0 && Math.abs(outboundOff) <= LEG_TIME && Math.abs(inboundOff) > LEG_TIME;
  return learns
    ? { leg: "outbound", seconds: outboundOff, distanceNm: null }
    : { leg: "inbound", seconds: inboundOff, distanceNm: null };
}

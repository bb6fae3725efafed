/** What is worth saying of a hold besides its laps: the speed, the height, the side not to be on. */
import type { Finding } from "../quantity/record.ts";
import type { Feet, Knots, NauticalMiles } from "../quantity/units.ts";
import { timesOfHold } from "./as-flown.ts";
import type { HoldFacts } from "./facts.ts";

/** From the lowest to the highest; 100 ft to either side is what the tests of both standards allow (FAA-S-ACS-8C III.B, Part-FCL appendix 7). */
const HEIGHT_SPREAD: Feet = 200;
/** Chosen: more than a tidy inbound leg ever strays; in a fast aircraft as many seconds of flight. */
const BEYOND_COURSE: NauticalMiles = 0.3;
const AT_SPEED: Knots = 100;

export function overSpeed(facts: HoldFacts): Finding[] {
  const { speed } = facts;
  if (!speed || speed.mostKt === null || !(speed.indicatedKt - speed.doubt95Kt > speed.mostKt)) return [];
  const { indicatedKt, doubt95Kt, mostKt } = speed;
  return [
    { code: "over-speed-limit", facts: { indicatedKt, doubt95Kt, mostKt }, evidence: timesOfHold(facts) },
  ];
}

/** Not of one that was climbed or descended in on purpose. */
export function height(facts: HoldFacts): Finding[] {
  const { altitude } = facts;
  if (!altitude || altitude.onPurpose || !(altitude.highestFt - altitude.lowestFt > HEIGHT_SPREAD)) return [];
  const { lowestFt, highestFt, meanFt } = altitude;
  return [{ code: "height-not-held", facts: { lowestFt, highestFt, meanFt }, evidence: timesOfHold(facts) }];
}

export function nonHoldingSide(facts: HoldFacts): Finding[] {
  const { seconds, farthestNm, farthestUtc } = facts.nonHoldingSide;
  const fastest = Math.max(AT_SPEED, ...facts.laps.map((lap) => lap.groundSpeedKt));
  if (!(farthestNm > (BEYOND_COURSE * fastest) / AT_SPEED)) return [];
  return [
    {
      code: "on-non-holding-side",
      facts: { seconds, farthestNm },
      evidence: { fromUtc: farthestUtc, toUtc: null },
    },
  ];
}

/** How long the legs of a hold were meant to be: as briefed, as the standard has them, or as they were flown. */
import type { HoldExercise } from "../brief/brief.ts";
import { outboundClock } from "../quantity/outbound-clock.ts";
import type { FeetMsl, Seconds, UtcMillis } from "../quantity/units.ts";
import type { HoldingStandard } from "../standard/holding.ts";
import { bandAt } from "./asked.ts";
import type { HoldFacts } from "./facts.ts";
import type { LapMoments } from "./lap.ts";

/** Legs flown within this of the standard's time were meant to have it. Chosen: a wind badly judged makes a leg so much too long. */
const LEG_MEANT: Seconds = 25;

/**
 * As briefed, else the time of the standard at that height. Of a hold that no brief names, what legs were meant is not
 * known: where those flown are far from the standard's, they are taken as they were flown.
 */
export function legOf(
  exercise: HoldExercise | null,
  times: readonly LapMoments[],
  standard: HoldingStandard,
  altitude: FeetMsl | null,
): HoldFacts["leg"] {
  const leg = exercise?.leg;
  if (leg?.by === "distance") return { by: "distance", distanceNm: leg.distance };
  if (leg) return { by: "time", seconds: leg.seconds };
  const { legTime } = bandAt(standard, altitude);
  const flown = exercise ? [] : times.flatMap((lap) => legSeconds(lap, standard)).sort((a, b) => a - b);
  const middle = flown[flown.length >> 1] ?? legTime;
  const seconds = Math.abs(middle - legTime) > LEG_MEANT ? 5 * Math.round(middle / 5) : legTime;
  return { by: "time", seconds: Math.max(5, seconds) };
}

/** The leg that the standard times, as flown and by its clock. */
function legSeconds(lap: LapMoments, { timed }: HoldingStandard): Seconds[] {
  const { outboundTurn, inboundTurn, abeam, end } = lap;
  if (!inboundTurn) return [];
  if (timed === "inbound") return end ? [(end.time - inboundTurn.to) / 1000] : [];
  const until = (from: UtcMillis): Seconds => (inboundTurn.from - from) / 1000;
  const outboundS = until(outboundTurn.to);
  return [outboundClock({ outboundS, outboundFromAbeamS: abeam === null ? null : until(abeam) }).seconds];
}

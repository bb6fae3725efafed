/** Legs of a hold that were not flown for the time or to the distance given. */
import { METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { isSolved } from "./asked.ts";
import type { HoldFacts, HoldLap } from "./facts.ts";

/** Common practice, no source. */
const LEG_TIME_OFF: Seconds = 10;
/** Chosen: what a distance is read to, twice. */
const LEG_DISTANCE_OFF: NauticalMiles = 0.3;

/** What may have been read where the outbound leg ended: from the distance along the course to the slant range of a station at the fix. */
function distanceRead({ outbound, altitude }: HoldLap): [NauticalMiles, NauticalMiles] {
  const height = ((altitude?.meanFt ?? 0) * METRES_PER_FOOT) / METRES_PER_NAUTICAL_MILE;
  return [Math.abs(outbound.endAlongNm), Math.hypot(outbound.endDistanceNm, height)];
}

/** Legs against the time or distance given, on the leg that the standard times. */
export function legFindings(facts: HoldFacts): Finding[] {
  return facts.laps.flatMap((lap, i): Finding[] => {
    const { leg } = facts;
    const { outbound, inbound, solved } = lap;
    if (leg.by === "distance") {
      const [least, most] = distanceRead(lap);
      if (leg.distanceNm > least - LEG_DISTANCE_OFF && leg.distanceNm < most + LEG_DISTANCE_OFF) return [];
      const told = { lap: i + 1, endedNm: outbound.endDistanceNm, askedNm: leg.distanceNm };
      return [
        {
          code: "leg-distance-off",
          facts: told,
          evidence: { fromUtc: outbound.fromUtc, toUtc: outbound.toUtc },
        },
      ];
    }
    const off = (seconds: number) => Math.abs(seconds - leg.seconds) > LEG_TIME_OFF;
    // one who times from abeam in the turn, and one who times from wings level, are both right
    const outboundOff =
      off(outbound.betweenTurnsS) && (outbound.fromAbeamS === null || off(outbound.fromAbeamS));
    const outboundTimed = facts.timing === "icao";
    // the first leg outbound is flown for the time given, to learn from: either that or the leg inbound is right
    const forgiven = i === 0 && !outboundOff;
    if (outboundTimed ? !outboundOff : !inbound || !off(inbound.seconds) || forgiven) return [];
    return [
      {
        code: "leg-time-off",
        facts: {
          lap: i + 1,
          leg: outboundTimed ? "outbound" : "inbound",
          seconds: outboundTimed ? outbound.seconds : inbound!.seconds,
          askedS: leg.seconds,
          outboundS: outbound.betweenTurnsS,
          solvedOutboundS: isSolved(solved) ? solved.outboundS : null,
        },
        evidence: outboundTimed
          ? { fromUtc: outbound.fromUtc, toUtc: outbound.toUtc }
          : { fromUtc: inbound!.fromUtc, toUtc: inbound!.toUtc },
      },
    ];
  });
}

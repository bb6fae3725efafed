/** Legs of a hold that were not flown for the time or to the distance given. */
import type { Finding } from "../quantity/record.ts";
import { LEG_DISTANCE, LEG_TIME } from "../standard/tolerance.ts";
import { isSolved } from "./asked.ts";
import type { HoldFacts } from "./facts.ts";

/** Legs against the time or distance given, on the leg that the standard times. */
export function legFindings(facts: HoldFacts): Finding[] {
  return facts.laps.flatMap((lap, i): Finding[] => {
    const { leg } = facts;
    const { legOff, outbound, inbound, solved } = lap;
    if (!legOff) return [];
    if (leg.by === "distance") {
      if (!(Math.abs(legOff.distanceNm ?? 0) >= LEG_DISTANCE)) return [];
      const told = { lap: i + 1, endedNm: outbound.endDistanceNm, askedNm: leg.distanceNm };
      return [
        {
          code: "leg-distance-off",
          facts: told,
          evidence: { fromUtc: outbound.fromUtc, toUtc: outbound.toUtc },
        },
      ];
    }
    if (!(Math.abs(legOff.seconds ?? 0) > LEG_TIME)) return [];
    const outboundTimed = legOff.leg === "outbound";
    return [
      {
        code: "leg-time-off",
        facts: {
          lap: i + 1,
          leg: legOff.leg,
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

/** Legs of a hold that were not flown for the time or to the distance given. */
import type { Finding } from "../quantity/record.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import { isSolved } from "./asked.ts";
import type { HoldFacts } from "./facts.ts";

/** Common practice, no source. */
const LEG_TIME_OFF: Seconds = 10;
/** Chosen: what a distance is read to, twice. */
const LEG_DISTANCE_OFF: NauticalMiles = 0.3;

/** Legs against the time or distance given, on the leg that the standard times. */
export function legFindings(facts: HoldFacts): Finding[] {
  return facts.laps.flatMap((lap, i): Finding[] => {
    const { leg } = facts;
    const { outbound, inbound, solved } = lap;
    if (leg.by === "distance") {
      const off = Math.abs(outbound.endAlongNm) - leg.distanceNm;
      if (!(Math.abs(off) > LEG_DISTANCE_OFF)) return [];
      const told = { lap: i + 1, endedNm: Math.abs(outbound.endAlongNm), askedNm: leg.distanceNm };
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

/** Legs of a hold that were not flown for the time or to the distance given, and those that nobody saw. */
import { outboundClock } from "../quantity/outbound-clock.ts";
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
    const outboundTimed = legOff.leg === "outbound";
    const unseen = (outboundTimed ? outbound : inbound)?.unseen?.most ?? 0;
    // as far as it is known: a leg whose doubt reaches within the limit is no fault
    if (!(Math.abs(legOff.seconds ?? 0) - facts.legTime95S - unseen > LEG_TIME)) return [];
    const asked = isSolved(solved) ? outboundClock(solved) : null;
    return [
      {
        code: "leg-time-off",
        facts: {
          lap: i + 1,
          leg: legOff.leg,
          seconds: outboundTimed ? outbound.seconds : inbound!.seconds,
          askedS: leg.seconds,
          begins: outbound.begins,
          outboundS: outbound.seconds,
          solvedOutboundS: asked?.seconds ?? null,
          solvedBegins: asked?.begins ?? null,
        },
        evidence: outboundTimed
          ? { fromUtc: outbound.fromUtc, toUtc: outbound.toUtc }
          : { fromUtc: inbound!.fromUtc, toUtc: inbound!.toUtc },
      },
    ];
  });
}

/** What the log does not show of a hold, or of the time of its legs, is no part of one well flown. */
export function legsUnseen({ legsUnseen: silence, laps }: HoldFacts): Finding[] {
  if (silence) {
    const { fromUtc, toUtc, seconds } = silence;
    return [{ code: "laps-in-silence", facts: { seconds }, evidence: { fromUtc, toUtc } }];
  }
  return laps.flatMap((lap, i) =>
    (["outbound", "inbound"] as const).flatMap((leg) => {
      const { unseen, fromUtc, toUtc } = lap[leg] ?? {};
      if (!unseen || !fromUtc) return [];
      const facts = { lap: i + 1, leg, mostS: unseen.most, silentS: unseen.seconds };
      return [{ code: "leg-end-in-silence", facts, evidence: { fromUtc, toUtc: toUtc ?? null } }];
    }),
  );
}

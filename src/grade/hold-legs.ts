/** The legs of a hold: what makes them no answer to the brief, and the criteria of their time and length. */
import type { HoldFacts } from "../hold/facts.ts";
import type { UnseenRecord } from "../quantity/unseen.ts";
import type { Criterion, Found } from "./criterion.ts";
import type { Verdict } from "./verdict.ts";

type Lap = HoldFacts["laps"][number];

export const wrongWay = ({ asFlown, turns }: HoldFacts): boolean =>
  asFlown !== null && asFlown.turns !== turns;

/** A leg that nobody saw may have had any length, and a height or a needle on it any value. */
export const unseenLegs = ({ legsUnseen }: HoldFacts): UnseenRecord | null =>
  legsUnseen && { most: Number.MAX_VALUE, seconds: legsUnseen.seconds };

/** Why, as a code, the laps are not all that was flown: the log begins or ends in flight in one that is not among them. */
export function lapReason({ lapCut }: HoldFacts): string | null {
  if (lapCut?.after) return "log-ends-within";
  return lapCut?.before ? "log-begins-within" : null;
}

/** The legs off what was asked, each with what its silences may hide: the one that is surely out, else the one that may be farthest out. */
function worstLeg(legs: readonly LegOff[], limit: number): LegOff | null {
  const by = (size: (leg: LegOff) => number) =>
    legs.reduce<LegOff | null>((most, leg) => (most && size(most) >= size(leg) ? most : leg), null);
  const surely = by(({ off, hidden }) => off - (hidden?.most ?? 0));
  const out = surely && surely.off - (surely.hidden?.most ?? 0) > limit;
  return out ? surely : by(({ off, hidden }) => off + (hidden?.most ?? 0));
}

interface LegOff {
  readonly lap: Lap;
  readonly off: number;
  readonly hidden: UnseenRecord | null | undefined;
}

export const LEG_TIME: Criterion<HoldFacts> = {
  id: "hold-leg-time",
  title: "Time of a leg, worst, off what was asked",
  unit: "s",
  limit: ({ hold }) => hold.legTime,
  find(facts, limit, { hold }): Found | null {
    const { laps, leg, legTime95S } = facts;
    if (leg.by !== "time") return null;
    if (wrongWay(facts)) return { cannotTell: "wrong-way" };
    if (!hold.rules) return { cannotTell: "holding-rules-not-named" };
    const legs = laps.flatMap((lap) => {
      const { legOff } = lap;
      if (legOff?.seconds == null) return [];
      return [{ lap, off: Math.abs(legOff.seconds), hidden: lap[legOff.leg]?.unseen }];
    });
    const found = worstLeg(legs, limit);
    if (!found) return { cannotTell: noneCloses(facts) ? "no-racetrack" : "no-whole-leg" };
    const { lap, off: value, hidden } = found;
    const worstUtc = (lap.legOff?.leg === "inbound" ? lap.inbound?.fromUtc : lap.outbound.fromUtc) ?? null;
    const doubt95 = legTime95S + (hidden?.most ?? 0);
    const which = { leg: legOf(facts, lap, lap.legOff!.seconds!), worstUtc, unseen: unseenLegs(facts) };
    return { value, doubt95, ...silentDoubt(hidden), beyond: null, notWhole: lapReason(facts), ...which };
  },
};

const noneCloses = ({ solved }: HoldFacts): boolean => solved !== null && "none" in solved;

/** Which leg it is, as a reader finds it. */
const legOf = ({ laps }: HoldFacts, lap: Lap, off: number): NonNullable<Verdict["leg"]> => ({
  lap: laps.indexOf(lap) + 1,
  leg: lap.legOff!.leg,
  off: off > 0 ? "long" : "short",
});

/** Why the doubt of a leg is as wide as it is. */
const silentDoubt = (hidden: LegOff["hidden"]) => (hidden ? { doubtIs: "leg-end-silent" } : {});

export const LEG_LENGTH: Criterion<HoldFacts> = {
  id: "hold-leg-length",
  title: "Length of a leg, worst, off what was asked",
  unit: "NM",
  limit: ({ hold }) => hold.legDistance,
  find(facts, limit): Found | null {
    const { laps, leg } = facts;
    if (leg.by !== "distance") return null;
    if (wrongWay(facts)) return { cannotTell: "wrong-way" };
    const legs = laps.flatMap((lap) => {
      if (lap.legOff?.distanceNm == null) return [];
      const { unseen } = lap.outbound;
      const hidden = unseen && { most: (unseen.most * lap.groundSpeedKt) / 3600, seconds: unseen.seconds };
      return [{ lap, off: Math.abs(lap.legOff.distanceNm), hidden }];
    });
    const found = worstLeg(legs, limit);
    if (!found) return { cannotTell: "no-whole-leg" };
    const { lap, off: value, hidden } = found;
    // the end of the leg is told to about a second of flight, besides the position
    const seen95 = Math.hypot((2 * lap.groundSpeedKt) / 3600, lap.rollOut?.across95Nm ?? 0);
    const doubt95 = seen95 + (hidden?.most ?? 0);
    const worstUtc = lap.outbound.toUtc;
    const which = { leg: legOf(facts, lap, lap.legOff!.distanceNm!), worstUtc, unseen: unseenLegs(facts) };
    return { value, doubt95, ...silentDoubt(hidden), beyond: null, notWhole: lapReason(facts), ...which };
  },
};

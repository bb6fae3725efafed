/** The criteria of a hold: the entry, the inbound course, the legs, the speed and the height. */
import type { HoldFacts } from "../hold/facts.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { Seconds, Share } from "../quantity/units.ts";
import { ENTRY_SECTORS } from "../standard/holding.ts";
import { altitudeCriteria } from "./altitude.ts";
import type { Criterion, Found } from "./criterion.ts";

type Lap = HoldFacts["laps"][number];

const wrongWay = ({ asFlown, turns }: HoldFacts): boolean => asFlown !== null && asFlown.turns !== turns;

/** How far the heading at the fix lies outside the sector of an entry, degrees; negative inside. */
function outsideSector(facts: HoldFacts, entry: NonNullable<HoldFacts["entry"]>): number {
  const { inboundTrueDeg, turns } = facts;
  const sector = ENTRY_SECTORS.find((s) => s.entry === entry.flown)!;
  const middle = sector.from + turnWidth(sector) / 2;
  const off = (turns === "right" ? 1 : -1) * turnFrom(inboundTrueDeg, entry.headingTrueDeg);
  return Math.abs(turnFrom(middle, off)) - turnWidth(sector) / 2;
}
const turnWidth = ({ from, to }: { readonly from: number; readonly to: number }): number =>
  (to - from + 360) % 360;

/** The lap whose value is the largest; null where none has one. */
function worst(laps: readonly Lap[], size: (lap: Lap) => number | null | undefined) {
  let found: { lap: Lap; value: number } | null = null;
  for (const lap of laps) {
    const value = size(lap);
    if (value != null && (!found || value > found.value)) found = { lap, value };
  }
  return found;
}

/** Time that the needle spent beyond a share on all laps, where the facts count that. */
function beyond(laps: readonly Lap[], limit: Share): Seconds | null {
  if (limit !== 0.5 && limit !== 0.75) return null;
  return laps.reduce(
    (sum, { tracking: t }) => sum + (t ? (limit === 0.5 ? t.beyondHalfS : t.beyondThreeQuarterS) : 0),
    0,
  );
}

const ENTRY: Criterion<HoldFacts> = {
  id: "hold-entry",
  title: "Entry, heading outside its sector",
  unit: "deg",
  limit: ({ hold }) => hold.entry,
  find(facts): Found | null {
    const { entry } = facts;
    if (facts.sure === false || !entry) return null;
    if (wrongWay(facts)) return { cannotTell: "wrong-way" };
    if (!entry.flown) return { cannotTell: "entry-not-clear" };
    if (entry.heading95Deg === null) return { cannotTell: "wind-not-known" };
    const toward = outsideSector(facts, entry);
    const value = Math.max(0, toward);
    return { value, toward, doubt95: entry.heading95Deg, beyond: null, worstUtc: entry.utc };
  },
};

const NEEDLE: Criterion<HoldFacts> = {
  id: "hold-needle",
  title: "Needle on the inbound course, worst",
  unit: "share",
  limit: ({ hold }) => hold.needle,
  find({ laps, scale }, limit): Found | null {
    if (!scale) return null;
    const found = worst(laps, ({ tracking }) => tracking && Math.abs(tracking.worstNeedle));
    const { tracking } = found?.lap ?? {};
    if (!found || !tracking) {
      const inbound = laps.some((lap) => lap.inbound);
      return { cannotTell: inbound ? "joined-near-station" : "course-not-flown-inbound" };
    }
    const { doubt95, worstUtc } = tracking;
    const unseen = worst(laps, (lap) => lap.tracking?.unseen?.most)?.lap.tracking?.unseen;
    return { value: found.value, doubt95, beyond: beyond(laps, limit), worstUtc, unseen };
  },
};

const LEG_TIME: Criterion<HoldFacts> = {
  id: "hold-leg-time",
  title: "Time of a leg, worst, off what was asked",
  unit: "s",
  limit: ({ hold }) => hold.legTime,
  find({ laps, leg, legTime95S }, _, { hold }): Found | null {
    if (leg.by !== "time") return null;
    if (!hold.rules) return { cannotTell: "holding-rules-not-named" };
    const found = worst(laps, ({ legOff }) => (legOff?.seconds == null ? null : Math.abs(legOff.seconds)));
    if (!found) return { cannotTell: "no-whole-leg" };
    const { lap, value } = found;
    const worstUtc = (lap.legOff?.leg === "inbound" ? lap.inbound?.fromUtc : lap.outbound.fromUtc) ?? null;
    return { value, doubt95: legTime95S, beyond: null, worstUtc };
  },
};

const LEG_LENGTH: Criterion<HoldFacts> = {
  id: "hold-leg-length",
  title: "Length of a leg, worst, off what was asked",
  unit: "NM",
  limit: ({ hold }) => hold.legDistance,
  find({ laps, leg }): Found | null {
    if (leg.by !== "distance") return null;
    const found = worst(laps, ({ legOff }) =>
      legOff?.distanceNm == null ? null : Math.abs(legOff.distanceNm),
    );
    if (!found) return { cannotTell: "no-whole-leg" };
    const { lap, value } = found;
    // the end of the leg is told to about a second of flight, besides the position
    const doubt95 = Math.hypot((2 * lap.groundSpeedKt) / 3600, lap.rollOut?.across95Nm ?? 0);
    return { value, doubt95, beyond: null, worstUtc: lap.outbound.toUtc };
  },
};

const SPEED: Criterion<HoldFacts> = {
  id: "hold-speed",
  title: "Holding speed, estimated",
  unit: "kt",
  limit: ({ hold }, facts) =>
    hold.speed && hold.rules && facts?.speed?.mostKt != null
      ? { limit: facts.speed.mostKt, edge: "within", citation: facts.speed.citation }
      : null,
  find({ speed }): Found {
    if (!speed) return { cannotTell: "wind-not-known" };
    const { indicatedKt: value, doubt95Kt: doubt95 } = speed;
    return { value, toward: value, doubt95, beyond: null, worstUtc: null };
  },
};

const HEIGHT = altitudeCriteria<HoldFacts>(
  "hold",
  ({ hold }) => hold.altitude,
  (facts) => facts.altitude,
);

export const HOLD_CRITERIA: readonly Criterion<HoldFacts>[] = [
  ENTRY,
  NEEDLE,
  LEG_TIME,
  LEG_LENGTH,
  SPEED,
  ...HEIGHT,
];

/** Of a hold that no brief asked for: nobody knows which course and legs were meant. */
export const HOLD_FOUND_CRITERIA: readonly Criterion<HoldFacts>[] = [ENTRY, SPEED, ...HEIGHT];

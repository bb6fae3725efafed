/** The criteria of a hold: the side, the entry, the inbound course, the legs, the speed and the height. */
import type { HoldFacts } from "../hold/facts.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { Seconds, Share } from "../quantity/units.ts";
import { ENTRY_SECTORS } from "../standard/holding.ts";
import { altitudeCriteria } from "./altitude.ts";
import type { Criterion, Found } from "./criterion.ts";
import { LEG_LENGTH, LEG_TIME, lapReason, unseenLegs, wrongWay } from "./hold-legs.ts";

type Lap = HoldFacts["laps"][number];

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

const SIDE: Criterion<HoldFacts> = {
  id: "hold-side",
  title: "Turned to the side that the brief gives",
  unit: "side",
  limit: () => ({ limit: 0, edge: "within", citation: "the procedure as briefed" }),
  find: (facts) => ({ kept: !wrongWay(facts) }),
};

const ENTRY: Criterion<HoldFacts> = {
  id: "hold-entry",
  title: "Entry, heading outside its sector",
  unit: "deg",
  limit: ({ hold }) => hold.entry,
  find(facts): Found | null {
    const { entry } = facts;
    if (facts.sure === false || !entry) return null;
    if (wrongWay(facts)) return { cannotTell: "wrong-way" };
    if (facts.legsUnseen && facts.legsUnseen.toUtc <= entry.utc) return { cannotTell: "log-silent-there" };
    if (entry.untold === "log-begins") return { cannotTell: "log-begins-in-hold" };
    if (!entry.flown) return { cannotTell: "entry-not-clear" };
    if (entry.heading95Deg === null) return { cannotTell: "wind-not-known" };
    const value = outsideSector(facts, entry);
    return { value, oneSided: true, doubt95: entry.heading95Deg, beyond: null, worstUtc: entry.utc };
  },
};

const NEEDLE: Criterion<HoldFacts> = {
  id: "hold-needle",
  title: "Needle on the inbound course, worst",
  unit: "share",
  limit: ({ hold }) => hold.needle,
  find(facts, limit): Found | null {
    const { laps, scale } = facts;
    if (!scale) return null;
    const flown = laps.filter(({ inbound }) => inbound);
    const never = flown.some(({ joined }) => joined === "never");
    const found = worst(flown, ({ tracking }) => tracking && Math.abs(tracking.worstNeedle));
    const { tracking } = found?.lap ?? {};
    if (!found || !tracking) {
      if (never) return { cannotTell: "lap-never-established" };
      return { cannotTell: flown.length > 0 ? "joined-near-station" : "course-not-flown-inbound" };
    }
    const { doubt95, worstUtc } = tracking;
    const unseen =
      unseenLegs(facts) ?? worst(laps, (lap) => lap.tracking?.unseen?.most)?.lap.tracking?.unseen;
    const judged = flown.filter((lap) => lap.tracking).length;
    return {
      value: found.value,
      doubt95,
      beyond: beyond(laps, limit),
      worstUtc,
      unseen,
      ...(judged < flown.length ? { laps: { judged, flown: flown.length } } : {}),
      notWhole: never ? "lap-never-established" : lapReason(facts),
    };
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
    return { value, oneSided: true, doubt95, beyond: null, worstUtc: null };
  },
};

const HEIGHT = altitudeCriteria<HoldFacts>(
  "hold",
  ({ hold }) => hold.altitude,
  (facts) => {
    const unseen = unseenLegs(facts);
    return facts.altitude && unseen
      ? { ...facts.altitude, unseenRange: unseen, unseenTarget: unseen }
      : facts.altitude;
  },
  lapReason,
);

export const HOLD_CRITERIA: readonly Criterion<HoldFacts>[] = [
  SIDE,
  ENTRY,
  NEEDLE,
  LEG_TIME,
  LEG_LENGTH,
  SPEED,
  ...HEIGHT,
];

/** The one line of a hold that was not flown. */
export const HOLD_NOT_FLOWN: readonly Criterion<HoldFacts>[] = [ENTRY];
/** Of a hold that no brief asked for: nobody knows which course and legs were meant. */
export const HOLD_FOUND_CRITERIA: readonly Criterion<HoldFacts>[] = [ENTRY, SPEED, ...HEIGHT];

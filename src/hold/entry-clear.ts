/** Whether the entry that was read is the one that was flown: the reading leans on the sector, and must not be held against it unseen. */
import { measureColumns } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Seconds, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { HoldEntry } from "../standard/holding.ts";
import { type HoldFrame, meanDirection } from "./frame.ts";
import type { LapMoments } from "./lap.ts";
import type { Pass } from "./pass.ts";

/** A teardrop leads so far from the reciprocal of the course, to the holding side. FAA AIM 5-3-8 j.3. */
const TEARDROP: AngleSize = 30;
/** Over the fix so near and so long before what was taken for a direct entry, another was flown. Chosen: a lap and an entry take 2 to 6 minutes. */
const OVER: NauticalMiles = 0.3;
const BEFORE: readonly [Seconds, Seconds] = [360, 75];

/** A hold that ended over the fix was there so much longer. Chosen: half a turn at rate one. */
const SAME_PASS: Seconds = 30;

/** Track of an outbound leg off the reciprocal of the course, toward the holding side positive. */
const offReciprocal = (frame: HoldFrame, from: UtcMillis, to: UtcMillis): TurnDegrees | null => {
  const track = meanDirection(frame, frame.track, from, to);
  return track === null ? null : -frame.side * turnFrom(frame.course.azimuth + 180, track);
};

function overFixBefore({ course, motion }: HoldFrame, pass: Pass, heldBefore: UtcMillis): boolean {
  const [first, to] = BEFORE.map((s) => firstAtOrAfter(motion.time, pass.time - s * 1000)) as [
    number,
    number,
  ];
  const from = Math.max(first, firstAtOrAfter(motion.time, heldBefore + SAME_PASS * 1000));
  if (from >= to) return false;
  const { along, across } = measureColumns(
    course,
    motion.latitude.subarray(from, to),
    motion.longitude.subarray(from, to),
  );
  return along.some((a, i) => Math.hypot(a, across[i]!) < OVER * METRES_PER_NAUTICAL_MILE);
}

/**
 * Direct and teardrop are told apart by the arrival, which is right while pilots enter by the sector. False where what
 * followed looks like the other: a first leg nearer to a teardrop's than to those of later laps, or the other way
 * round; or the fix flown over before. `away`: the outbound leg of the entry.
 * `heldBefore`: when a hold there before it ended; before that it was flown over in that one.
 */
export function entryIsClear(
  frame: HoldFrame,
  flown: HoldEntry,
  pass: Pass,
  laps: readonly LapMoments[],
  away: { readonly from: UtcMillis; readonly to: UtcMillis } | null,
  heldBefore: UtcMillis = Number.NEGATIVE_INFINITY,
): boolean {
  // the way back may be long and crooked, but the way out is along the course
  if (flown === "parallel") return away !== null;
  if (flown === "direct" && overFixBefore(frame, pass, heldBefore)) return false;
  const legs = laps.map(({ outboundTurn, inboundTurn }) =>
    inboundTurn ? offReciprocal(frame, outboundTurn.to, inboundTurn.from) : null,
  );
  const first = flown === "direct" ? legs[0] : away && offReciprocal(frame, away.from, away.to);
  const later = (flown === "direct" ? legs.slice(1) : legs).filter((leg) => leg !== null);
  if (first == null || later.length === 0) return true;
  const [asLap, asTeardrop] = [
    Math.abs(first - median(Float64Array.from(later))),
    Math.abs(first - TEARDROP),
  ];
  return flown === "direct" ? asLap <= asTeardrop : asTeardrop <= asLap;
}

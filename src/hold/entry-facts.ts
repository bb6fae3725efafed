/** The entry: the sector that the heading at the fix lies in, the entry flown, and how its outbound leg was flown. */

import { direction, turnFrom } from "../quantity/angle.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, Seconds, UtcMillis } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { ENTRY_SECTORS, ENTRY_TOLERANCE, type HoldEntry, type TurnSide } from "../standard/holding.ts";
import type { Held } from "./asked.ts";
import { entryIsClear } from "./entry-clear.ts";
import type { HoldFacts } from "./facts.ts";
import type { FoundHold } from "./found.ts";
import { type HoldFrame, meanDirection, rowsBetween } from "./frame.ts";
import type { LapMoments } from "./lap.ts";
import { logBeginsIn } from "./log-ends.ts";
import { nearestPass, type Pass } from "./pass.ts";

/** The heading on reaching the fix is that of these seconds before it: past the last look at the needle, before the turn. Chosen. */
const REACHING: readonly [Seconds, Seconds] = [15, 3];
/** A teardrop or parallel entry is back at the fix no sooner than this; the fix is looked for so long before the first row. Chosen: both its turns alone take over a minute. */
const LEAST_ENTRY: Seconds = 75;
const LOOK_BACK: Seconds = 60;
/** Turning slower than this, deg/s, is flying straight, and within this of the reciprocal of the inbound course, outbound. Chosen: a teardrop leads 30 degrees off it. */
const STRAIGHT = 1;
const OUTBOUND_WITHIN: AngleSize = 60;
/** A wander that is over within this, and leaves the track where it was within so much, is no end of the leg. Chosen: a hand-flown heading and its correction; a turn inbound is 150° and more. */
const WANDER: Seconds = 10;
const SAME_TRACK: AngleSize = 20;

export interface Sector {
  readonly asked: HoldEntry;
  /** Within the tolerance of a border: the entry on its other side. */
  readonly alsoAllowed: readonly HoldEntry[];
  /** How far from the nearest border with another entry. */
  readonly fromBorder: AngleSize;
}

/** The sector that a heading at the fix lies in. Both true, or both magnetic. */
export function sectorOf(heading: number, inbound: number, turns: TurnSide): Sector {
  const off = direction(turns === "right" ? heading - inbound : inbound - heading);
  const within = (from: number, to: number) => direction(off - from) < direction(to - from);
  const asked = ENTRY_SECTORS.find(({ from, to }) => within(from, to))!.entry;
  const others = ENTRY_SECTORS.filter(({ entry }) => entry !== asked).map(({ entry, from, to }) => ({
    entry,
    away: Math.min(Math.abs(turnFrom(from, off)), Math.abs(turnFrom(to, off))),
  }));
  return {
    asked,
    alsoAllowed: others.filter(({ away }) => away <= ENTRY_TOLERANCE).map(({ entry }) => entry),
    fromBorder: Math.min(...others.map(({ away }) => away)),
  };
}

/** The fix first reached: for a direct entry where the first lap begins, else before the entry. */
export function firstPass(
  frame: HoldFrame,
  entry: HoldEntry | null,
  first: LapMoments,
  begins: UtcMillis,
): Pass {
  const latest = first.start.time - LEAST_ENTRY * 1000;
  if (entry === null || entry === "direct" || !(begins < latest)) return first.start;
  // the first turn of the entry is begun at the fix: not much later than its first row
  return nearestPass(frame, begins - LOOK_BACK * 1000, Math.min(latest, begins + LOOK_BACK * 1000));
}

/** The longest straight between two times that leads away along the course, wander and all. */
function outboundLeg(frame: HoldFrame, from: UtcMillis, to: UtcMillis) {
  const { start, end } = rowsBetween(frame, from, to);
  const straight = (i: number) =>
    Math.abs(frame.motion.turnRate[frame.start + i]!) < STRAIGHT &&
    Math.abs(turnFrom(frame.course.azimuth + 180, frame.track[i]!)) <= OUTBOUND_WITHIN;
  const legs: { first: number; last: number }[] = [];
  for (let i = start; i < end; i++) {
    if (!straight(i)) continue;
    const last = legs.at(-1);
    const wandered =
      last &&
      frame.time[i]! - frame.time[last.last]! <= WANDER * 1000 &&
      Math.abs(turnFrom(frame.track[last.last]!, frame.track[i]!)) <= SAME_TRACK;
    if (wandered) last.last = i;
    else legs.push({ first: i, last: i });
  }
  const times = legs.map(({ first, last }) => ({ from: frame.time[first]!, to: frame.time[last]! }));
  return times.sort((a, b) => b.to - b.from - (a.to - a.from))[0] ?? null;
}

type Untold = NonNullable<HoldFacts["entry"]>["untold"];

/**
 * Why the passage of the fix may not be that of the entry, or its sector not that of the hold as flown. A turn to the
 * other side, as in a parallel entry, shows an arrival; and where another hold ended there, the log shows that.
 */
function untoldOf(
  frame: HoldFrame,
  { entry, heldBefore, turns: flownTurns }: EntryFound,
  pass: Pass,
  laps: readonly LapMoments[],
  turns: TurnSide,
): Untold {
  if (flownTurns !== turns) return "wrong-way";
  if (entry !== "parallel" && heldBefore === undefined && logBeginsIn(frame, laps, pass)) return "log-begins";
  return undefined;
}

type EntryFound = Pick<FoundHold, "entry" | "heldBefore" | "turns">;

export function entryFacts(
  frame: HoldFrame,
  found: EntryFound,
  pass: Pass,
  laps: readonly LapMoments[],
  { inbound, inbound95, turns }: Held,
): HoldFacts["entry"] {
  const { entry: flown, heldBefore } = found;
  const [early, late] = REACHING.map((s) => pass.time - s * 1000) as [number, number];
  const nose = meanDirection(frame, frame.heading, early, late);
  const heading = nose ?? meanDirection(frame, frame.track, early, late);
  const first = laps[0];
  if (heading === null || !first) return null;
  const { start, end } = rowsBetween(frame, early, late);
  // the wind, and the heading with it, may be known for a part of these seconds only
  const sd = frame.wind?.alongFlight.headingSd
    .subarray(frame.start + start, frame.start + end)
    .filter((value) => !Number.isNaN(value));
  const { asked, alsoAllowed, fromBorder } = sectorOf(heading, inbound, turns);
  const away =
    flown === "teardrop" || flown === "parallel"
      ? outboundLeg(frame, pass.time, first.start.time - 30_000)
      : null;
  const leg = away && {
    heading: meanDirection(frame, frame.heading, away.from, away.to),
    track: meanDirection(frame, frame.track, away.from, away.to),
  };
  const clear = flown !== null && entryIsClear(frame, flown, pass, laps, away, heldBefore);
  const untold = untoldOf(frame, found, pass, laps, turns) ?? (clear ? undefined : "not-clear");
  return {
    utc: utcText(pass.time),
    headingTrueDeg: heading,
    headingIs: nose === null ? "track" : "heading",
    heading95Deg: nose === null || !sd?.length ? null : Math.hypot(Z95 * Math.max(...sd), inbound95),
    asked,
    alsoAllowed: [...alsoAllowed],
    fromBorderDeg: fromBorder,
    flown: untold ? null : flown,
    ...(untold ? { untold } : {}),
    fixMissNm: pass.distance,
    outbound:
      away && leg?.track != null
        ? {
            seconds: (away.to - away.from) / 1000,
            headingTrueDeg: leg.heading,
            trackTrueDeg: leg.track,
            // toward the holding side positive, whatever the side of the turns
            trackOffDeg: (turns === "right" ? -1 : 1) * turnFrom(inbound + 180, leg.track),
          }
        : null,
  };
}

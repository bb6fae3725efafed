/** Entries into a hold: which one a heading at the fix asks for, and the steps of each. */
import { direction } from "../quantity/angle.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import type { Entry, Side } from "./script.ts";

/**
 * The entry for a heading at the fix, from the inbound course.
 * Source: FAA AIM 5-3-8 j.7, FIG 5-3-4: the 70 degree line; sectors 110, 70 and 180 degrees wide (widths from memory).
 */
export function entryFor(heading: TrueDegrees, inbound: TrueDegrees, turns: Side): Entry {
  const off = direction(turns === "right" ? heading - inbound : inbound - heading);
  return off >= 110 && off < 180 ? "teardrop" : off >= 180 && off < 290 ? "parallel" : "direct";
}

/** How an entry is flown, in true directions over the ground. Source: FAA AIM 5-3-8 j.3. */
export interface EntryPlan {
  /** Turned to by the shorter way and flown for the time or distance of a leg. */
  readonly away: TrueDegrees;
  /** Back toward the inbound course, and the side of the turn there. */
  readonly back: TrueDegrees;
  readonly turnBack: Side;
}

const other = (side: Side): Side => (side === "right" ? "left" : "right");

/** Null for a direct entry, which is a lap like any other. */
export function entryPlan(entry: Entry, inbound: TrueDegrees, turns: Side): EntryPlan | null {
  const right = turns === "right" ? 1 : -1;
  const outbound = direction(inbound + 180);
  if (entry === "direct") return null;
  if (entry === "parallel") {
    const back = direction(inbound - right * 30);
    return { away: outbound, back, turnBack: other(turns) };
  }
  const away = direction(outbound - right * 30);
  return { away, back: inbound, turnBack: turns };
}

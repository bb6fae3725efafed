/** How far the inbound course found may lean toward ways back that cut it: where hardly any followed it, it is made out rather than seen. */
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Share, TrueDegrees } from "../quantity/units.ts";
import type { HoldFrame } from "./frame.ts";
import { type LapMoments, wayBack } from "./lap.ts";

/** Ways back that mostly met the course at more than this hardly followed it. Chosen. */
const CUT: AngleSize = 10;
/**
 * Such a course leans toward the cut by up to 5.7 degrees at cuts of 25 on the simulator's holds flown so (seeds 7101
 * to 7112), where the finder's own doubt was 3. A quarter of the cut holds all.
 */
const LEAN: Share = 1 / 4;

/** 0 where most ways back followed the course. */
export function courseLean(frame: HoldFrame, laps: readonly LapMoments[], inbound: TrueDegrees): AngleSize {
  const cuts = laps
    .flatMap((lap) => {
      const track = wayBack(frame, lap)?.track ?? null;
      return track === null ? [] : Math.abs(turnFrom(inbound, track));
    })
    .sort((a, b) => a - b);
  return (cuts[cuts.length >> 1] ?? 0) > CUT ? Math.max(...cuts) * LEAN : 0;
}

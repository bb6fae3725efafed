/** Whether one lap alone is enough for a hold: it begins where it ends, comes back by half a turn and near the course, and is no longer than holds are. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { AngleSize, Seconds, Share, UtcMillis } from "../quantity/units.ts";
import type { FixAndCourse } from "./fix-and-course.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";

/** It began as near to the fix, in seconds of flight to the side and past it. Tuned on simulation, seeds 1 to 900: 9 and -3 to 9. */
const BEGINS_ASIDE: Seconds = 10;
const BEGINS_ALONG: readonly [Seconds, Seconds] = [-5, 10];
/** One leg at least is no longer, and the turn inbound is no less. Chosen: 6 NM at 100 kt take 216 s, with 15 kt of wind ahead 254 s; the correction outbound takes 70 degrees at most, and the cut to the course 10 more. */
const LONGEST_LEGS: Seconds = 260;
/** ... and none is longer. Chosen: 6 NM at 60 kt over the ground. */
const LONGEST_LEG: Seconds = 360;
const LEAST_TURN: AngleSize = 100;
/** The turn inbound ends no farther aside of the course, seconds of flight, or so much of the outbound leg where that is more: arrivals to a circuit do. Tuned on simulation, seeds 1 to 3000: one hold of 463 does at more than 57 s, and that at 86 after 347. */
const ROLLS_OUT_ASIDE: Seconds = 60;
const ROLLS_OUT_SHARE: Share = 0.25;

export function standsAlone(ground: Ground, { times }: FoundLap, { fix, course }: FixAndCourse): boolean {
  const outbound: Seconds = (times.inboundTurn - times.outbound) / 1000;
  const inbound: Seconds = (times.end - times.inbound) / 1000;
  const back = Math.abs(ground.headingAt(times.inbound) - ground.headingAt(times.inboundTurn));
  if (Math.min(outbound, inbound) > LONGEST_LEGS || Math.max(outbound, inbound) > LONGEST_LEG) return false;
  if (back < LEAST_TURN) return false;
  /** In seconds of flight past the fix and to the right of the course. */
  const from = (time: UtcMillis): readonly [Seconds, Seconds] => {
    const { east, north } = ground.place(time);
    const [e, n] = [(east - fix.east) / ground.metres, (north - fix.north) / ground.metres];
    return [e * sinDeg(course) + n * cosDeg(course), e * cosDeg(course) - n * sinDeg(course)];
  };
  const [along, across] = from(times.start);
  const [, rollOut] = from(times.inbound);
  return (
    Math.abs(across) < BEGINS_ASIDE &&
    along > BEGINS_ALONG[0] &&
    along < BEGINS_ALONG[1] &&
    Math.abs(rollOut) < Math.max(ROLLS_OUT_ASIDE, ROLLS_OUT_SHARE * outbound)
  );
}

/** Whether a hold that was not found may have been flown where the log is silent: about its fix, with turns enough for a lap. */
import type { HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** A racetrack reaches so far from its fix. Chosen: legs of 1 min at 200 kt, with its turns. */
const ABOUT: NauticalMiles = 5;
/** A shorter silence hides no turn of a hold. Chosen: 45 degrees at rate one. */
const LEAST: Seconds = 15;
/** Where so much of the way at the ground speed is made good, it was flown straight on. Chosen: a turn of 90 degrees makes 0.9 of it good. */
const STRAIGHT_ON: Share = 0.92;
/** ... and the track beyond the silence is as before within this. Chosen: what a heading wanders. */
const SAME_TRACK: AngleSize = 10;
/** A standard-rate turn, degrees a second: FAA AIM 5-3-8 j.6. */
const RATE = 3;
/** One lap is two half turns. */
const LAP: AngleSize = 360;

/** The finding, with the longest such silence; null where the log would show a lap. */
export function holdInSilence({ fix, between }: HoldExercise, motion: Motion): Finding | null {
  const { time } = motion;
  const placed = (row: number) => ({ latitude: motion.latitude[row]!, longitude: motion.longitude[row]! });
  const near = (row: number) => inverse(fix, placed(row)).distance < ABOUT * METRES_PER_NAUTICAL_MILE;
  const silent = (row: number): Seconds => (time[row]! - time[row - 1]!) / 1000;
  const hides = (row: number): boolean => {
    if (silent(row) < LEAST || !near(row - 1) || !near(row)) return false;
    if (between && (time[row]! < between.start || time[row - 1]! > between.end)) return false;
    const knots = (motion.groundSpeed[row - 1]! + motion.groundSpeed[row]!) / 2;
    const flown = (knots * METRES_PER_NAUTICAL_MILE * silent(row)) / 3600;
    if (Math.abs(turnFrom(motion.trackAngle[row - 1]!, motion.trackAngle[row]!)) > SAME_TRACK) return true;
    return inverse(placed(row - 1), placed(row)).distance < STRAIGHT_ON * flown;
  };
  let [longest, turned, hidden]: [number | null, AngleSize, AngleSize] = [null, 0, 0];
  let times = 0;
  motion.spans.forEach(({ start, end }: Span, i) => {
    if (i > 0 && hides(start)) {
      times++;
      hidden += RATE * silent(start);
      if (longest === null || silent(start) > silent(longest)) longest = start;
    }
    for (let row = start + 1; row < end; row++) {
      if (near(row)) turned += Math.abs(turnFrom(motion.trackAngle[row - 1]!, motion.trackAngle[row]!));
    }
  });
  if (longest === null || turned + hidden < LAP) return null;
  const evidence = { fromUtc: utcText(time[longest - 1]!), toUtc: utcText(time[longest]!) };
  return { code: "log-silent-there", facts: { seconds: silent(longest), times }, evidence };
}

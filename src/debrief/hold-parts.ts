/** Laps of one hold that the brief asks for as several: the same hold twice in a row, as with other legs the second time. */
import type { BriefedHoldLeg, Exercise, HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import type { FoundHold, FoundLap } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { Motion } from "../track/motion.ts";

/** Holds of a brief so near to each other are the same. Chosen: what rounding does to places and courses. */
const SAME_FIX: NauticalMiles = 0.1;
const SAME_COURSE: AngleSize = 2;
/** Legs of a part that fit those asked for worse than this are not it: a quarter too long or short. Chosen. */
const FITS: Share = 0.75;
/** Where both are to have the same legs, each has so many laps at least: one lap more of a hold is no second one. Chosen. */
const LAPS_EACH = 2;
/** Where the brief leaves the legs to the standard: one minute. FAA AIM 5-3-8 j.5. */
const USUAL: Seconds = 60;

export interface HoldPart {
  readonly hold: FoundHold;
  /** Greatest in sum for parts that are all of the hold, and whose legs are those asked for. */
  readonly score: Share;
}

const sameHold = (one: HoldExercise, other: Exercise | undefined): other is HoldExercise =>
  other?.kind === "hold" &&
  !one.between &&
  !other.between &&
  one.turns === other.turns &&
  Math.abs(turnFrom(one.course.azimuth, other.course.azimuth)) <= SAME_COURSE &&
  inverse(one.fix, other.fix).distance <= SAME_FIX * METRES_PER_NAUTICAL_MILE;

const legText = ({ leg }: HoldExercise): string => JSON.stringify(leg);

/** The parts of a found hold that may be one of several exercises in a row that ask for it; none where one alone does. */
export function partsFor(
  exercise: HoldExercise,
  exercises: readonly Exercise[],
  hold: FoundHold,
  motion: Motion,
): HoldPart[] {
  const beside = [exercises[exercise.index - 1], exercises[exercise.index + 1]].filter((other) =>
    sameHold(exercise, other),
  );
  if (beside.length === 0) return [];
  const alike = beside.every((other) => legText(other) === legText(exercise));
  const least = alike ? LAPS_EACH : 1;
  const { laps } = hold;
  const parts: HoldPart[] = [];
  for (let from = 0; from < laps.length; from++)
    for (let to = from + least; to <= laps.length; to++) {
      const whole = to - from === laps.length;
      const left = [from, laps.length - to].every((n) => n === 0 || n >= least);
      if (whole || !left || !laps[to - 1]!.complete) continue;
      const fits = laps.slice(from, to).map((lap) => (alike ? 1 : fitOf(lap, exercise, motion)));
      if (median(Float64Array.from(fits)) < FITS) continue;
      const sum = fits.reduce((a, b) => a + b, 0);
      const score = (1 + sum / laps.length) / 2 - (alike ? uneven(to - from, laps.length) : 0);
      parts.push({ hold: partOf(hold, from, to), score });
    }
  return parts;
}

/** Nothing shows where one ended: halves are the likeliest. */
const uneven = (laps: number, all: number): Share => (laps / all - 0.5) ** 2 / 10;

function partOf(hold: FoundHold, from: number, to: number): FoundHold {
  const laps = hold.laps.slice(from, to);
  const first = from === 0;
  return {
    ...hold,
    span: {
      start: first ? hold.span.start : laps[0]!.outboundTurn.start,
      end: to === hold.laps.length ? hold.span.end : laps.at(-1)!.inbound.end + 1,
    },
    // from over the fix on the inbound course it is entered like any other lap
    ...(first ? {} : { entry: "direct" as const, heldBefore: laps[0]!.times.start }),
    laps,
  };
}

/** How near the leg of a lap is to the one asked for. */
function fitOf(lap: FoundLap, { leg, fix }: HoldExercise, motion: Motion): Share {
  const share =
    leg?.by === "distance" ? milesOut(lap, fix, motion) / leg.distance : secondsIn(lap) / timed(leg);
  return Math.min(share, 1 / share);
}

const timed = (leg: Extract<BriefedHoldLeg, { by: "time" }> | null): Seconds => leg?.seconds ?? USUAL;
const secondsIn = ({ times }: FoundLap): Seconds => (times.end - times.inbound) / 1000;
const milesOut = ({ inboundTurn }: FoundLap, fix: HoldExercise["fix"], motion: Motion): NauticalMiles => {
  const row = inboundTurn.start;
  const place = { latitude: motion.latitude[row]!, longitude: motion.longitude[row]! };
  return inverse(fix, place).distance / METRES_PER_NAUTICAL_MILE;
};

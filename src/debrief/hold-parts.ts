/** Laps of a hold that the brief asks for as several: the same hold twice in a row, as with other legs the second time. */
import type { BriefedHoldLeg, Exercise, HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import type { FoundHold, FoundLap } from "../hold/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { median } from "../quantity/weigh.ts";
import type { Motion } from "../track/motion.ts";
import { atSameFix } from "./same-fix.ts";

/** Inbound courses of a brief so near to each other are the same. Chosen: what rounding does to courses. */
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
  atSameFix(one, other);

const legText = ({ leg }: HoldExercise): string => JSON.stringify(leg);

/** Whether a neighbour of an exercise in the brief asks for the same hold. */
export const askedAgain = (exercise: HoldExercise, exercises: readonly Exercise[]): boolean =>
  neighbours(exercise, exercises).length > 0;

const neighbours = ({ index }: HoldExercise, exercises: readonly Exercise[]): HoldExercise[] => {
  const own = exercises[index] as HoldExercise;
  return [exercises[index - 1], exercises[index + 1]].filter((other) => sameHold(own, other));
};

/**
 * What may be one of several exercises in a row that ask for the same hold: each of some holds that were found one
 * right after the other, and each row of their laps.
 */
export function partsFor(
  exercise: HoldExercise,
  exercises: readonly Exercise[],
  holds: readonly FoundHold[],
  motion: Motion,
): HoldPart[] {
  const alike = neighbours(exercise, exercises).every((other) => legText(other) === legText(exercise));
  const least = alike ? LAPS_EACH : 1;
  const laps = holds.flatMap((hold) => hold.laps.map((lap) => ({ lap, hold })));
  const fits = laps.map(({ lap }) => (alike ? 1 : fitOf(lap, exercise, motion)));
  const parts: HoldPart[] = [];
  for (let from = 0; from < laps.length; from++)
    for (let to = from + 1; to <= laps.length; to++) {
      const own = fits.slice(from, to);
      const left = [from, to - from, laps.length - to].every((n) => n === 0 || n >= least);
      const found = laps[from]!.hold === laps[to - 1]!.hold && to - from === laps[from]!.hold.laps.length;
      const fit = left && laps[to - 1]!.lap.complete && median(Float64Array.from(own)) >= FITS;
      if (!found && !fit) continue;
      const sum = own.reduce((a, b) => a + b, 0);
      const score = (1 + sum / laps.length) / 2 - (alike ? uneven(to - from, laps.length) : 0);
      parts.push({ hold: partOf(laps.slice(from, to)), score });
    }
  return parts;
}

/** Nothing shows where one ended: halves are the likeliest. */
const uneven = (laps: number, all: number): Share => (laps / all - 0.5) ** 2 / 10;

function partOf(part: readonly { readonly lap: FoundLap; readonly hold: FoundHold }[]): FoundHold {
  const [first, last] = [part[0]!, part.at(-1)!];
  const laps = part.map(({ lap }) => lap);
  const begins = first.hold.laps[0] === first.lap;
  const ends = last.hold.laps.at(-1) === last.lap;
  return {
    ...first.hold,
    span: {
      start: begins ? first.hold.span.start : first.lap.outboundTurn.start,
      end: ends ? last.hold.span.end : last.lap.inbound.end + 1,
    },
    // from over the fix on the inbound course it is entered like any other lap
    ...(begins ? {} : { entry: "direct" as const, heldBefore: first.lap.times.start }),
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

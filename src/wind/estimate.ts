/** Wind and airspeed along a flight from its ground velocities alone, with their doubt. */
import type { AirspeedPrior, WindPrior } from "../quantity/prior.ts";
import { airborneRows } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { alongRows, restsOn, unknownAlong } from "./along.ts";
import { beliefOf, hiddenChange, withPriors } from "./belief.ts";
import { collectFacts, middleAltitude } from "./collect.ts";
import { dayWind, windOver } from "./fact.ts";
import { type Facts, speedOf } from "./facts.ts";
import { allowGusts, gustOf } from "./gusts.ts";
import type { MeasuredAir } from "./measured.ts";
import { solveFacts } from "./solve.ts";
import { setSteps } from "./steps.ts";
import type { RestsOn, WindAlongFlight, WindEstimate, WindFact } from "./wind.ts";

export interface WindPriors {
  readonly airspeed: AirspeedPrior | null;
  readonly winds: readonly WindPrior[];
  /** What the log recorded of airspeed and heading: from `measuredAir`. */
  readonly measured?: MeasuredAir | null;
}

/**
 * The wind along a flight. Legs must be those of the motion, in order.
 *
 * Each ground velocity gives one equation: less the wind, its length is the airspeed. Courses that differ, and turns
 * most of all, make both components known; a single straight tells at most the part along the track, and that only
 * where an airspeed is stated. What cannot be known is said to be unknown.
 *
 * Method: iterated Kalman smoother (Gauss-Newton for the most probable path) over few facts, from several starts;
 * each turn is predicted from all others and loses trust where they contradict it. Linear in the length of the flight.
 */
export function estimateWind(motion: Motion, legs: readonly Leg[], priors: WindPriors): WindEstimate {
  const flown = airborneRows(motion);
  const measured = priors.measured ?? null;
  const sources = statedSources(priors);
  const { known, alone } = along(motion, legs, priors, flown);
  const rest = restsOn(motion, legs, known, alone);
  if (measured) markMeasured(rest, known, measured);
  const alongFlight = { ...known, restsOn: rest };
  const estimate = {
    alongFlight,
    legs: [] as WindFact[],
    day: dayWind(alongFlight, motion),
    priorsUsed: sources,
  };
  for (const leg of legs) estimate.legs.push(windOver(estimate, motion, leg.span));
  return estimate;
}

/** The wind at each row, and what would be known of it without the user's word, which tells what rests on that. */
function along(
  motion: Motion,
  legs: readonly Leg[],
  { airspeed, winds, measured = null }: WindPriors,
  flown: Uint8Array,
): { readonly known: WindAlongFlight; readonly alone: WindAlongFlight } {
  const facts = collectFacts(motion, legs, flown);
  const groundSpeed = medianSpeed(facts);
  if (facts.count < 2 || !(groundSpeed > 0)) {
    const unknown = unknownAlong(motion);
    return { known: unknown, alone: unknown };
  }
  const seen = setSteps(facts, groundSpeed);
  const belief = {
    ...beliefOf(groundSpeed, middleAltitude(motion, flown)),
    hiddenChange: hiddenChange(seen, straightMinutes(facts)),
  };
  allowGusts(facts, gustOf(facts, belief.airspeedWander));
  const recorded = withPriors(facts, null, [], measured);
  const told = withPriors(facts, airspeed, winds, measured);
  const stated = told.count > recorded.count;
  const solution = solveFacts(told, belief, groundSpeed);
  const known = alongRows(motion, solution, flown);
  if (!stated) return { known, alone: known };
  return {
    known,
    alone: alongRows(motion, solveFacts(recorded, belief, groundSpeed, solution), flown),
  };
}

function markMeasured(rest: RestsOn[], known: WindAlongFlight, measured: MeasuredAir): void {
  for (let k = 0; k < rest.length; k++) {
    const recorded = !Number.isNaN(measured.trueAirspeed[k]! + measured.heading[k]!);
    if (recorded && known.knowledge[k] !== "none") rest[k] = "measured";
  }
}

function straightMinutes({ count, seconds, turning }: Facts): number {
  let sum = 0;
  for (let i = 1; i < count; i++)
    if (turning[i] === 0 && turning[i - 1] === 0) sum += seconds[i]! - seconds[i - 1]!;
  return sum / 60;
}

function medianSpeed(facts: Facts): number {
  const speeds = Float64Array.from({ length: facts.count }, (_, i) => speedOf(facts, i));
  return speeds.sort()[speeds.length >> 1] ?? 0;
}

/** The user's priors in words: the wind's own source, and the airspeed. */
function statedSources({ airspeed, winds }: WindPriors): string[] {
  const sources = winds.map((w) => w.source);
  return airspeed ? [`true airspeed ${airspeed.trueAirspeed} ± ${airspeed.doubt} kt`, ...sources] : sources;
}

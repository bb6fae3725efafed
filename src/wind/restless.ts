/** How restless wind and airspeed of this flight are: several degrees of each are tried, and weighed by how well they foretell each fact. */
import type { FactSmoother } from "./filter.ts";
import type { Belief } from "./state.ts";

interface Degree {
  /** Factor on the usual variance of every change with time or with height. */
  readonly factor: number;
  /** How likely beforehand. */
  readonly chance: number;
}

/** Tuned on simulated flights, seeds 1 to 60. */
const WIND: readonly Degree[] = [
  { factor: 1, chance: 0.6 },
  { factor: 2, chance: 0.25 },
  { factor: 4, chance: 0.15 },
];
/** A wind that changes more than usual also changes more quickly, which the factors do not say: what they exceed 1 by counts so much. Tuned likewise. */
const QUICKER = 2;
/** Of changes with height. */
const HEIGHT: readonly Degree[] = [
  { factor: 0.3, chance: 0.35 },
  { factor: 1, chance: 0.35 },
  { factor: 4, chance: 0.3 },
];
/** Calmer than usual is weighed too, lest the wind be thought calm because the airspeed is thought restless. */
const AIRSPEED: readonly Degree[] = [
  { factor: 0.6, chance: 0.4 },
  { factor: 1.1, chance: 0.35 },
  { factor: 2, chance: 0.15 },
  { factor: 4, chance: 0.1 },
];

/** Of the airspeed's changes with climbs, and where they begin and end. */
const CLIMBS: readonly Degree[] = [
  { factor: 0.1, chance: 0.5 },
  { factor: 1, chance: 0.5 },
];

/**
 * The belief with the mean factors that the flight calls for; an airspeed calmer than usual is not believed in the end.
 * Overwrites the last forward pass: run a whole one after it.
 */
export function restlessness(smoother: FactSmoother, belief: Belief, usual: Belief): Belief {
  const air = (factor: number) => ({ ...belief, airspeedWander: usual.airspeedWander * Math.sqrt(factor) });
  const seen = air(meanFactor(smoother, AIRSPEED, air));
  const { climbStep, windStep, farStep } = smoother.facts;
  // nothing depends on what a flight that held its height would say of climbs
  const climbUnrest = climbStep.some((v) => v > 0)
    ? meanFactor(smoother, CLIMBS, (factor) => ({ ...seen, climbUnrest: factor }))
    : 1;
  const climbing = { ...seen, climbUnrest };
  const unrest = meanFactor(smoother, WIND, (factor) => ({ ...climbing, windUnrest: factor }));
  const windy = { ...climbing, windUnrest: 1 + QUICKER * (unrest - 1) };
  const heightUnrest = windStep.some((v, i) => v + farStep[i]! > 0)
    ? meanFactor(smoother, HEIGHT, (factor) => ({ ...windy, heightUnrest: factor }))
    : 1;
  return { ...windy, heightUnrest, airspeedWander: Math.max(seen.airspeedWander, usual.airspeedWander) };
}

function meanFactor(
  smoother: FactSmoother,
  degrees: readonly Degree[],
  believe: (factor: number) => Belief,
): number {
  const costs = degrees.map(({ factor }) => smoother.forward(believe(factor)));
  const least = Math.min(...costs);
  let sum = 0;
  let mean = 0;
  degrees.forEach(({ factor, chance }, i) => {
    const weight = chance * Math.exp((least - costs[i]!) / 2);
    sum += weight;
    mean += weight * factor;
  });
  return mean / sum;
}

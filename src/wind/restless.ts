/** How restless the wind of this flight is: several degrees of it are tried, and weighed by how well they foretell each fact. */
import type { FactSmoother } from "./filter.ts";
import type { Belief } from "./state.ts";

/** Factors on the variance of every change of the wind, none below the usual, and how likely each is beforehand. Tuned on simulated flights, seeds 1 to 60. */
const UNRESTS = [
  { factor: 1, chance: 0.7 },
  { factor: 1.7, chance: 0.2 },
  { factor: 3, chance: 0.07 },
  { factor: 5, chance: 0.03 },
] as const;

/** The belief with the mean factor that the flight calls for. Overwrites the last forward pass: run a whole one after it. */
export function unrestOfWind(smoother: FactSmoother, belief: Belief): Belief {
  const costs = UNRESTS.map(({ factor }) => smoother.forward({ ...belief, windUnrest: factor }));
  const least = Math.min(...costs);
  let sum = 0;
  let mean = 0;
  UNRESTS.forEach(({ factor, chance }, i) => {
    const weight = chance * Math.exp((least - costs[i]!) / 2);
    sum += weight;
    mean += weight * factor;
  });
  return { ...belief, windUnrest: mean / sum };
}

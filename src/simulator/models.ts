/** Usual models of pilot, airspeed and receiver, that scenarios start from. */
import type { Scenario } from "./scenario.ts";

/** Every value fixed: flights that show something. Sizes as in a light aircraft, common practice, no source. */
export const KNOWN_MODELS = {
  airspeed: { trueAirspeed: 100, wander: { sd: 1.5, time: 60 }, lostInTurns: 1, heldIndicated: false },
  pilot: { heading: { sd: 2, time: 20 }, turnRate: 3, turnRateSpread: 0.08, rollLag: 2.5 },
  receiver: { bias: { sd: 2.5, time: 180 }, white: 0.4, decimals: 5 },
  logging: { every: 1 },
} satisfies Partial<Scenario>;

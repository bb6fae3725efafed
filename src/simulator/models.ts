/** Usual models of pilot, airspeed and receiver, that scenarios start from. */
import type { Scenario } from "./scenario.ts";

/** Every value fixed: flights that show something. Sizes as in a light aircraft, common practice, no source. */
export const KNOWN_MODELS = {
  airspeed: { trueAirspeed: 100, wander: { sd: 1.5, time: 60 }, lostInTurns: 1, heldIndicated: false },
  pilot: { heading: { sd: 2, time: 20 }, turnRate: 3, turnRateSpread: 0.08, rollLag: 2.5 },
  receiver: { bias: { sd: 2.5, time: 180 }, white: 0.4, decimals: 5 },
  logging: { every: 1 },
} satisfies Partial<Scenario>;

/**
 * Values drawn anew for each seed over what light aircraft, pilots and portable receivers show: flights for measuring
 * accuracy. Sizes: common practice, no source; receiver: between the 3 m of good sets (SPS PS 2008, preface) and its half.
 */
export const DRAWN_MODELS = {
  wind: {
    from: [0, 360],
    speed: [5, 35],
    altitude: 3000,
    slow: { sd: 2, time: 900 },
    shearRms: 3,
    gusts: null,
  },
  airspeed: {
    trueAirspeed: [90, 120],
    wander: { sd: 1.5, time: 60 },
    lostInTurns: [0, 1],
    heldIndicated: false,
  },
  pilot: KNOWN_MODELS.pilot,
  receiver: { bias: { sd: [2, 3], time: [60, 300] }, white: [0.3, 0.5], decimals: 5 },
  logging: { every: 1 },
} satisfies Partial<Scenario>;

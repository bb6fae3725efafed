/** A scenario without noise, wind or receiver errors, for tests that put in what they need. */
import type { Scenario } from "../../src/simulator/scenario.ts";

const none = { sd: 0, time: 60 };

export const STILL: Scenario = {
  name: "still",
  about: "No wind, no noise.",
  start: {
    position: { latitude: 35.6, longitude: 172.3 },
    heading: 90,
    altitude: 4000,
    time: Date.UTC(2026, 9, 17, 1, 0, 0),
  },
  wind: { from: 0, speed: 0, altitude: 4000, slow: none, shearRms: 0, gusts: null },
  airspeed: { trueAirspeed: 100, wander: none, lostInTurns: 0, heldIndicated: false },
  pilot: { heading: none, turnRate: 3, turnRateSpread: 0, rollLag: 2.5 },
  receiver: { bias: none, white: 0, decimals: 9 },
  logging: { every: 1 },
  script: [],
  brief: null,
};

/** Constant wind. */
export const blowing = (from: number, speed: number): Scenario["wind"] => ({ ...STILL.wind, from, speed });
export const flyingAt = (trueAirspeed: number): Scenario["airspeed"] => ({ ...STILL.airspeed, trueAirspeed });

/** How much slower than at rate one an aircraft turns: times that a pilot counts at rate one are as much longer. */
import type { AngleSize, DegreesPerSecond, Knots } from "../quantity/units.ts";
import { rateOfBank } from "../wind/index.ts";

/** Turns of a hold are made at 25 degrees of bank or at rate one, whichever needs less bank. ICAO Doc 8168 vol. I, as quoted in national publications; FAA AIM 5-3-8 j.6 with a flight director. */
const USUAL_BANK: AngleSize = 25;
export const RATE_ONE: DegreesPerSecond = 3;

/** The rate at the usual bank, at most rate one. */
export const usualRate = (trueAirspeed: Knots): DegreesPerSecond =>
  Math.min(RATE_ONE, rateOfBank(USUAL_BANK, trueAirspeed));

/** 1 at rate one, more where the usual bank turns slower. */
export const slowness = (trueAirspeed: Knots): number => RATE_ONE / usualRate(trueAirspeed);

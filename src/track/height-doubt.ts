/** How far a height by GPS may lie from what the altimeter showed, and how well it shows a change of height. */
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import type { Feet, FeetMsl } from "../quantity/units.ts";

/** Vertical error of a receiver, 95 %: 13 m. GPS SPS Performance Standard 2020, 3.8.3, from memory. */
export const RECEIVER_HEIGHT_95: Feet = 13 / METRES_PER_FOOT;
/** An altimeter reads wrong by about 4 ft for each 1,000 ft above its setting source and degree off the standard atmosphere (common practice, no source). */
const PER_THOUSAND_FEET_AND_DEGREE = 4;
/** Air temperature against the standard atmosphere, 95 % of days. Chosen. */
const DEGREES_95 = 15;
/** Setting and instrument: 75 ft is what an altimeter may be off before flight (FAA AIM 7-2-3, from memory). */
const ALTIMETER_95: Feet = 75;
/** Feet to a hectopascal near sea level (common practice: 27 to 30; the larger). */
const FEET_PER_HPA = 30;
/** The air at sea level against 1013.25 hPa, 95 % of days. Chosen: as lows and highs of the middle latitudes go, 993 to 1033 hPa. */
const PRESSURE_95 = 20;
/** Slow wander of a receiver's height over the minutes of one exercise, 95 %: its error is mostly common to all of them. Chosen. */
const WANDER_95: Feet = 20;

/** Half-width of the 95 % interval of what the altimeter showed, given a height by GPS; the datum of the log taken as sea level. */
export const altimeterDoubt95 = (height: FeetMsl): Feet =>
  Math.hypot(RECEIVER_HEIGHT_95, altimeterOff95(Math.abs(height)));

/** Half-width of the 95 % interval of what the altimeter showed more or less than the true height, so far above where its setting was taken. */
export function altimeterOff95(above: Feet): Feet {
  const air = (Math.abs(above) / 1000) * PER_THOUSAND_FEET_AND_DEGREE * DEGREES_95;
  return Math.hypot(air, ALTIMETER_95);
}

/** Half-width of the 95 % interval of a height on 1013.25 hPa against one above sea level, the setting of the day not known. */
export const PRESSURE_HEIGHT_95: Feet = FEET_PER_HPA * PRESSURE_95;

/** Half-width of the 95 % interval of a change of height within minutes. */
export const HEIGHT_CHANGE_95: Feet = WANDER_95;

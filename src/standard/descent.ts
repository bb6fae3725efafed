/** Descents as published: gradients, rates and height doubts as data with citations, no logic. */
import type { Feet, FeetPerMinute, Share } from "../quantity/units.ts";

/** The path that descents are measured against by habit. FAA Order 8260.3: 318 ft/NM, 3°, the best gradient of a final without vertical guidance. */
export const USUAL_GRADIENT: Feet = 318;

/** A rate that light aircraft descend at under instruments. Common practice, no source. */
export const USUAL_RATE: FeetPerMinute = 500;

/** What a GPS height may be off, vertical, 95 %: 13 m of the global average (GPS SPS Performance Standard 2020, 3.8.3, from memory). */
export const GPS_HEIGHT_95: Feet = 13 / 0.3048;

/**
 * An altimeter set to the field reads wrong by 4 % of the height for each 10 °C that the air is off the standard
 * (ICAO Doc 8168, from memory; common practice). The log does not tell the temperature: 10 °C is taken, 95 %.
 */
export const ALTIMETER_SHARE_95: Share = 0.04;

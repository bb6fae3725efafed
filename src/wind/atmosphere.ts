/** The standard atmosphere, as far as airspeed needs it. */
import type { FeetMsl } from "../quantity/units.ts";

/**
 * True airspeed over equivalent airspeed at a height: 1 / sqrt(density ratio).
 * Source: U.S. Standard Atmosphere 1976, lapse 6.5 K/km below 11 km and isothermal above; heights beyond are held.
 */
export function trueOverEquivalent(altitude: FeetMsl): number {
  const h = Math.max(-2000, Math.min(65000, altitude));
  const tropopause = 36089.24;
  const theta = 1 - 6.875586e-6 * Math.min(h, tropopause); // 0.0065 K/m * 0.3048 / 288.15 K a foot
  const ratio = theta ** 4.25588 * Math.exp(-Math.max(0, h - tropopause) / 20805.8);
  return 1 / Math.sqrt(ratio);
}

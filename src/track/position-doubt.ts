/** The part of a receiver's position error that no smoother sees, because it changes too slowly. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";

/**
 * One standard deviation of one axis: 8 m horizontal, 95 % (GPS SPS Performance Standard 2020, 3.8.3, from memory), over
 * the 95 % radius of a circular normal, 2.448 standard deviations. To be added to the doubt of a smoothed position,
 * which is about this error.
 */
export const SLOW_POSITION_SD: NauticalMiles = 8 / 2.448 / METRES_PER_NAUTICAL_MILE;

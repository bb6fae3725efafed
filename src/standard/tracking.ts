/** From when the tracking of a course or a final is worth a sentence: numbers as data, alike for both, no logic. */
import type { Share } from "../quantity/units.ts";

/** Swings of the track from side to side: so many, at such a rate a minute, are called chasing. Tuned: tidy simulated pilots stay under a third of the rate. */
export const CHASED = { count: 4, perMinute: 1 } as const;

/** An intercept that went past by this share of full scale has overshot. Common practice, no source. */
export const OVERSHOT_NEEDLE: Share = 0.25;

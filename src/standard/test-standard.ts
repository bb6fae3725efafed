/** What a test standard is made of: its limits, each with where it is written, or null where it sets none. */
import type { AngleSize, Feet, FeetPerMinute, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { HoldingStandard } from "./holding.ts";

/** A limit, and where it is written. How it is worded: at the limit is still in (`within`), or already out (`less-than`). */
export interface Limit<T extends number> {
  readonly limit: T;
  readonly edge: "within" | "less-than";
  readonly citation: string;
}

/** Null where the standard sets no limit. */
export interface TestStandard {
  readonly id: string;
  /** As in "US instrument rating". */
  readonly title: string;
  readonly citation: string;
  readonly course: {
    /** Needle, of full scale. */
    readonly needle: Limit<Share> | null;
    /** Where full scale is a distance: the needle may go this far for a short while, which the text does not measure. */
    readonly briefly: Limit<Share> | null;
    readonly altitude: Limit<Feet> | null;
  };
  readonly hold: {
    /** On the inbound course. */
    readonly needle: Limit<Share> | null;
    readonly altitude: Limit<Feet> | null;
    /** How far the heading at the fix may lie outside the sector of the entry flown. */
    readonly entry: Limit<AngleSize> | null;
    /** Of the leg that is timed, or measured, to each side. */
    readonly legTime: Limit<Seconds> | null;
    readonly legDistance: Limit<NauticalMiles> | null;
    /** Whose published times, speeds and timed leg count; null where the standard does not say: then no time and no speed is judged. */
    readonly rules: HoldingStandard["id"] | null;
    /** Whether the holding speeds of its rules bind. */
    readonly speed: boolean;
  };
  readonly arc: {
    readonly distance: Limit<NauticalMiles> | null;
    readonly altitude: Limit<Feet> | null;
  };
  readonly descent: {
    /** At the point where the height is wanted. */
    readonly altitude: Limit<Feet> | null;
  };
  readonly approach: {
    /** On the final. */
    readonly needle: Limit<Share> | null;
    /** As of a course: where full scale is a distance. */
    readonly briefly: Limit<Share> | null;
    /** The vertical needle of a glide path. */
    readonly glidePath: Limit<Share> | null;
    /** In feet in its place, where the path is the altimeter's own: below it anywhere, above it low down. */
    readonly barometricPath: { readonly below: Limit<Feet>; readonly aboveLow: Limit<Feet> } | null;
    /** Over the final fix. */
    readonly fixAltitude: Limit<Feet> | null;
    /** How far above and below a minimum descent altitude, and where a climb away is begun at a decision altitude. */
    readonly minimumDescent: MinimumLimits;
    readonly decision: MinimumLimits;
    /** How far below the height of a step-down before its place is passed. */
    readonly stepDown: Limit<Feet> | null;
    /** On the course of a missed approach. */
    readonly missedTrack: Limit<AngleSize> | null;
    /** At the heights where an approach is to be stable. */
    readonly gates: {
      readonly needle: Limit<Share> | null;
      readonly sink: Limit<FeetPerMinute> | null;
    };
  };
}

export interface MinimumLimits {
  readonly above: Limit<Feet> | null;
  readonly below: Limit<Feet> | null;
}

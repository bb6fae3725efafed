/** The truth of a flight as it is written beside its log: the contract. Angles true, wind *from*, right positive. */

/** Mean over some seconds. Wind *from*, true. */
export interface TrueWind {
  /** Middle of the span, UTC. */
  readonly t: string;
  readonly ele_m: number;
  readonly wind_from: number;
  readonly wind_kt: number;
  readonly tas_kt: number;
}

/** Signs: right positive. Values from `establishedUtc` to `endUtc`. */
export interface TrueExercise {
  readonly title: string;
  readonly form: "to" | "from" | "leg";
  readonly courseTrueDeg: number;
  readonly startUtc: string;
  /** Null where the course was never established. */
  readonly establishedUtc: string | null;
  readonly endUtc: string;
  readonly windFromTrueDeg: number;
  readonly windKt: number;
  readonly tasKt: number;
  readonly meanHeadingTrueDeg: number;
  readonly meanTrackTrueDeg: number;
  /** Heading less course: the mean that was flown, and what the mean wind needed. */
  readonly flownCorrectionDeg: number;
  readonly neededCorrectionDeg: number;
  readonly maxCrossTrackNm: number;
  /** Deviation over full scale, outside the mile about a station where the needle is left alone. */
  readonly maxNeedle: number;
  readonly events: readonly TrueEvent[];
}

export interface TrueEvent {
  readonly code: string;
  readonly utc: string;
  /** When it stopped: the next event, or the end of the exercise. */
  readonly untilUtc: string;
  /** Mean track, and track less course, over that time without its first 15 s, in which the turn is made. */
  readonly trackTrueDeg: number;
  readonly trackErrorDeg: number;
  /** When the needle first showed a quarter in that time, or null. */
  readonly quarterUtc: string | null;
}

/** Times are UTC, angles true, right positive. */
export interface TrueHold {
  readonly title: string;
  readonly fix: readonly [latitude: number, longitude: number];
  readonly inboundTrueDeg: number;
  readonly turn: "left" | "right";
  readonly entry: "direct" | "teardrop" | "parallel";
  /** First passage of the fix, and the last. */
  readonly t0: string;
  readonly t1: string;
  readonly laps: readonly {
    /** Over the fix. */
    readonly utc: string;
    readonly outboundUtc: string;
    /** Between the turns. */
    readonly outboundS: number;
    readonly inboundUtc: string;
    /** From the end of the turn to the fix. */
    readonly inboundS: number;
    readonly endUtc: string;
    readonly outboundHeadingTrueDeg: number;
    readonly rolloutCrossTrackNm: number;
    readonly neededCorrectionDeg: number | null;
    /** Outbound correction over the inbound one that the wind needed; null in next to no crosswind. */
    readonly factor: number | null;
    readonly solvedOutboundHeadingTrueDeg: number | null;
    readonly solvedOutboundS: number | null;
  }[];
}

/** Times are UTC, distances before the threshold, right of course positive; null where it did not happen. */
export interface TrueApproach {
  readonly title: string;
  readonly threshold: readonly [latitude: number, longitude: number];
  readonly courseTrueDeg: number;
  readonly elevationFt: number;
  readonly startUtc: string;
  /** On the cut, track less course; null on an arc. */
  readonly interceptDeg: number | null;
  readonly overshootNm: number;
  readonly establishedUtc: string | null;
  readonly finalFixUtc: string | null;
  readonly finalFixFt: number | null;
  /** Decision or minimum descent altitude first passed. */
  readonly minimumUtc: string | null;
  /** When the pilot began the climb. */
  readonly missedUtc: string | null;
  readonly lowestFt: number;
  readonly thresholdUtc: string | null;
  readonly outcome: "landed" | "missed";
  readonly endUtc: string;
}

export interface Truth {
  readonly format: "hindtrack-truth";
  readonly version: 1;
  readonly scenario: string;
  readonly seed: number;
  readonly about: string;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly truth: {
    readonly wind: {
      readonly method: string;
      readonly bin_seconds: number;
      readonly series: readonly TrueWind[];
    };
    readonly exercises: readonly TrueExercise[];
    readonly holds: readonly TrueHold[];
    /** Only where there are some. */
    readonly approaches?: readonly TrueApproach[];
  };
}

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
  /** What ends the legs: seconds inbound, or miles from the fix at the end of the outbound leg. */
  readonly leg: { readonly seconds: number } | { readonly distanceNm: number; readonly by: string };
  /** As flown, and as the sector of the heading over the fix asks for. */
  readonly entry: "direct" | "teardrop" | "parallel";
  readonly entrySector: "direct" | "teardrop" | "parallel";
  readonly headingAtFixTrueDeg: number;
  /** The turns and legs of a teardrop or parallel entry, from the first passage of the fix to the next; else none. */
  readonly entryParts: readonly {
    readonly part: "turn" | "outbound" | "inbound-turn" | "inbound";
    readonly startUtc: string;
    readonly endUtc: string;
  }[];
  /** First passage of the fix, and the last. */
  readonly t0: string;
  readonly t1: string;
  readonly laps: readonly TrueLap[];
}

/** Headings and tracks are means over the leg, null where it took less than 3 s. */
export interface TrueLap {
  /** Over (or abeam) the fix: the turn to the outbound leg begins. */
  readonly utc: string;
  /** That turn ends. */
  readonly outboundUtc: string;
  /** The fix is abeam again; null where the outbound leg ends before. */
  readonly abeamUtc: string | null;
  /** The outbound leg ends and the turn inbound begins. */
  readonly inboundTurnUtc: string;
  /** That turn ends. */
  readonly inboundUtc: string;
  /** Over the fix. */
  readonly endUtc: string;
  /** Between the turns. */
  readonly outboundS: number;
  /** From the end of the turn to the fix. */
  readonly inboundS: number;
  /** Aimed at. */
  readonly outboundHeadingTrueDeg: number;
  readonly meanOutboundHeadingTrueDeg: number | null;
  readonly meanOutboundTrackTrueDeg: number | null;
  readonly meanInboundHeadingTrueDeg: number | null;
  readonly meanInboundTrackTrueDeg: number | null;
  /** Where the outbound leg ended, from the fix: along the inbound course (negative: before the fix), right of it. */
  readonly outboundEndAlongNm: number;
  readonly outboundEndAcrossNm: number;
  readonly rolloutCrossTrackNm: number;
  /** At the end of the lap, right of the fix positive. */
  readonly fixAcrossNm: number;
  /** Means over the lap. */
  readonly windFromTrueDeg: number;
  readonly windKt: number;
  readonly tasKt: number;
  readonly neededCorrectionDeg: number | null;
  /** Outbound correction over the inbound one that the wind needed; null in next to no crosswind. */
  readonly factor: number | null;
  /** What the wind at the start of the lap asked for; null where nothing closes. */
  readonly solvedOutboundHeadingTrueDeg: number | null;
  readonly solvedOutboundS: number | null;
}

/** Deviation: distance from the station less the radius, outside positive, from `joinedUtc` to `turnOffUtc`. */
export interface TrueArc {
  readonly title: string;
  readonly station: readonly [latitude: number, longitude: number];
  readonly radiusNm: number;
  readonly turn: "left" | "right";
  readonly startUtc: string;
  /** Null where it was never joined. */
  readonly joinedUtc: string | null;
  /** The turn off the arc begins. */
  readonly turnOffUtc: string;
  /** Rolled out on the radial. */
  readonly endUtc: string;
  readonly turnOffRadialTrueDeg: number;
  /** At `endUtc`, right of the course along the radial positive. */
  readonly rollOutCrossTrackNm: number;
  readonly maxDeviationNm: number;
  readonly meanDeviationNm: number;
  readonly rmsDeviationNm: number;
  /** Share of the time within a quarter, half and whole mile of the radius. */
  readonly within: readonly [quarter: number, half: number, whole: number];
  /** Heading less tangent, away from the station positive: the mean that was flown, and what the wind needed. */
  readonly flownCorrectionOutDeg: number;
  readonly neededCorrectionOutDeg: number;
  readonly windFromTrueDeg: number;
  readonly windKt: number;
  readonly tasKt: number;
}

/** Heights are true heights. */
export interface TrueDescent {
  readonly title: string;
  readonly fix: readonly [latitude: number, longitude: number];
  readonly toFt: number;
  readonly beforeNm: number;
  readonly rateFpm: number;
  /** Begun so much after the moment that this rate asked for. */
  readonly lateS: number;
  readonly beganUtc: string | null;
  readonly beganAltitudeFt: number | null;
  readonly beganToGoNm: number | null;
  /** Where the height was wanted. */
  readonly crossingUtc: string;
  readonly crossingAltitudeFt: number;
  /** First within 50 ft of the height, null where that was after the fix. */
  readonly reachedUtc: string | null;
  readonly fixUtc: string;
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
  /** What the script made happen on the final; only where there was something. */
  readonly events?: readonly { readonly code: string; readonly utc: string }[];
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
    /** Only of flights that have some. */
    readonly arcs?: readonly TrueArc[];
    readonly descents?: readonly TrueDescent[];
    readonly approaches?: readonly TrueApproach[];
  };
}

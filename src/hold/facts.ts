/** Holds in numbers: the schemas of what the document says of them. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";

/** The racetrack that closes in a wind. Corrections: heading less the leg's own direction, right positive. */
export const racetrackSchema = z.strictObject({
  inboundHeadingTrueDeg: z.number(),
  inboundCorrectionDeg: z.number(),
  /** Between the turns. */
  inboundS: z.number(),
  inboundNm: z.number(),
  outboundHeadingTrueDeg: z.number(),
  /** Off the reciprocal of the inbound course. */
  outboundCorrectionDeg: z.number(),
  /** Between the turns. */
  outboundS: z.number(),
  /** From abeam the fix to the inbound turn; null where the fix is never abeam. */
  outboundFromAbeamS: z.number().nullable(),
  /** End of the outbound leg, from the fix: along the inbound course (negative: before the fix) and right of it. */
  outboundEndAlongNm: z.number(),
  outboundEndAcrossNm: z.number(),
  /** Outbound correction over the inbound one; null where the inbound one is under 1 degree. */
  factor: z.number().nullable(),
  turnRateDegS: z.number(),
  bankDeg: z.number(),
  turnRadiusNm: z.number(),
  lapS: z.number(),
  flags: z.array(z.enum(["correction-over-45", "outbound-outside-15-to-180-s"])),
});
export type Racetrack = z.infer<typeof racetrackSchema>;

/** Why nothing closes: no headway on the inbound course, or the turns alone are carried too far. */
export const noRacetrackSchema = z.strictObject({ none: z.enum(["wind-too-strong", "does-not-close"]) });
export type NoRacetrack = z.infer<typeof noRacetrackSchema>;

/** Half-widths of 95 % intervals of the solved racetrack, from the doubt of wind and airspeed. */
export const racetrackDoubtSchema = z.strictObject({
  inboundCorrection95Deg: z.number(),
  outboundCorrection95Deg: z.number(),
  outbound95S: z.number(),
  factor95: z.number().nullable(),
});
export type RacetrackDoubt = z.infer<typeof racetrackDoubtSchema>;

/** What an outbound correction of a whole multiple, timed from wings level, would have led to. */
export const ruleSchema = z.strictObject({
  factor: z.number(),
  outboundHeadingTrueDeg: z.number(),
  outboundS: z.number(),
  /** At the end of the inbound turn, right of the inbound course positive. */
  missNm: z.number(),
  /** From there to the fix along the course; null where the fix is passed already. */
  inboundS: z.number().nullable(),
});
export type RuleOutcome = z.infer<typeof ruleSchema>;

const entrySchema = z.enum(["direct", "teardrop", "parallel"]);

/** Rate: of the heading, or of the track where the wind is not known; rolling in and out left out. */
const turnSchema = z.strictObject({
  rateDegS: z.number(),
  bankDeg: z.number().nullable(),
  /** From the first bank to wings level. */
  seconds: z.number(),
});

/**
 * One lap: over or abeam the fix, the outbound turn, outbound, the inbound turn, inbound, to the fix again.
 * Corrections: heading less the leg's own direction, right positive; the outbound leg's direction is the reciprocal
 * of the inbound course. Across: right of the inbound course positive. Headings are estimated, null where the wind
 * is not known. Turns: from the turn's first to its last row.
 */
const lapSchema = z.strictObject({
  /** The fix is passed, and passed again; null where the hold was left before. */
  startUtc: utc,
  endUtc: utc.nullable(),
  /** How far from the fix it was passed at the start, right of the inbound course positive. */
  fixAcrossNm: z.number(),
  /**
   * Outbound by the timing rule, to the inbound turn: from abeam the fix; where that was passed in the turn, which hides
   * it, or never, from wings level. `fromAbeamS` and `betweenTurnsS` give both.
   */
  outbound: z.strictObject({
    fromUtc: utc,
    toUtc: utc,
    seconds: z.number(),
    begins: z.enum(["abeam", "wings-level"]),
    /** Null where the fix was never abeam. */
    fromAbeamS: z.number().nullable(),
    betweenTurnsS: z.number(),
    lengthNm: z.number(),
    headingTrueDeg: z.number().nullable(),
    trackTrueDeg: z.number(),
    correctionDeg: z.number().nullable(),
    correction95Deg: z.number().nullable(),
    /** End of the leg from the fix: along the inbound course (negative: before the fix) and right of it. */
    endAlongNm: z.number(),
    endAcrossNm: z.number(),
    /** Over the ground, from the fix straight to there. */
    endDistanceNm: z.number(),
  }),
  /**
   * From the end of the inbound turn to the fix; null where it was not flown to the fix. Heading, track and correction:
   * of the stretch along the course before the fix; of all of it, without a correction, where it was a cut back only.
   */
  inbound: z
    .strictObject({
      fromUtc: utc,
      toUtc: utc,
      seconds: z.number(),
      lengthNm: z.number(),
      headingTrueDeg: z.number().nullable(),
      trackTrueDeg: z.number(),
      correctionDeg: z.number().nullable(),
      correction95Deg: z.number().nullable(),
    })
    .nullable(),
  /** Outbound correction over inbound correction as flown; null where either is not known or the inbound one is under 1 degree. */
  factor: z.number().nullable(),
  /** Outbound correction flown over the inbound one that the wind needed; null likewise. */
  factorOfNeed: z.number().nullable(),
  /** Half-width of its 95 % interval. */
  factorOfNeed95: z.number().nullable(),
  turns: z.strictObject({ outbound: turnSchema, inbound: turnSchema.nullable() }),
  /** At the end of the inbound turn. */
  rollOut: z
    .strictObject({
      utc,
      alongNm: z.number(),
      acrossNm: z.number(),
      across95Nm: z.number(),
      /** Track less the inbound course there, right positive. */
      trackErrorDeg: z.number(),
      /** How far past the inbound course, seen from the side of the racetrack, before it came back; never negative. */
      overshootNm: z.number(),
    })
    .nullable(),
  altitude: z.strictObject({ meanFt: z.number(), worstFt: z.number(), worstUtc: utc }).nullable(),
  groundSpeedKt: z.number(),
  wind: windSchema.nullable(),
  /** What the wind of this lap asked for, or why nothing closes; null where the wind is not known. */
  solved: z.union([racetrackSchema, noRacetrackSchema]).nullable(),
  doubt: racetrackDoubtSchema.nullable(),
  /** What factors 1, 2 and 3 would have led to with the leg's own time. Empty where the wind is not known. */
  rules: z.array(ruleSchema),
});
export type HoldLap = z.infer<typeof lapSchema>;

export const holdFactsSchema = z.strictObject({
  fix: z.strictObject({
    /** Null where the hold was found, without a brief. */
    ident: z.string().nullable(),
    latitude: z.number(),
    longitude: z.number(),
    /** Half-width of the 95 % interval; null where it is published. */
    doubt95Nm: z.number().nullable(),
  }),
  inboundTrueDeg: z.number(),
  inboundMagneticDeg: z.number().nullable(),
  /** Half-width of the 95 % interval; null where it is published. */
  inbound95Deg: z.number().nullable(),
  turns: z.enum(["left", "right"]),
  /** As published, else the time of the standard at that height; of a hold found, as flown where that is far from it. */
  leg: z.union([
    z.strictObject({ by: z.literal("time"), seconds: z.number() }),
    z.strictObject({ by: z.literal("distance"), distanceNm: z.number() }),
  ]),
  /** Whose timing: the inbound leg's (US) or the outbound leg's (ICAO). */
  timing: z.enum(["us", "icao"]),
  /** Whether the inbound course found is sure; null where it is published. */
  sure: z.boolean().nullable(),
  /** "racetrack, maybe a circuit": neither a fix nor a height tells it from a traffic circuit. */
  maybeCircuit: z.boolean(),
  /** Where a published hold was flown: the fix and course that the flight itself shows. */
  asFlown: z
    .strictObject({ fixOffNm: z.number(), inboundOffDeg: z.number(), turns: z.enum(["left", "right"]) })
    .nullable(),
  entry: z
    .strictObject({
      utc,
      /** Heading on reaching the fix: estimated, or the track where the wind is not known. */
      headingTrueDeg: z.number(),
      headingIs: z.enum(["heading", "track"]),
      /** Half-width of its 95 % interval against the inbound course; null for a track. */
      heading95Deg: z.number().nullable(),
      /** By the sectors; `alsoAllowed` within 5 degrees of their border. */
      asked: entrySchema,
      alsoAllowed: z.array(entrySchema),
      /** From the heading to the nearest border of the sector asked. */
      fromBorderDeg: z.number(),
      flown: entrySchema.nullable(),
      fixMissNm: z.number(),
      /** The outbound leg of a teardrop or parallel entry. `trackOffDeg`: off the reciprocal of the inbound course, toward the holding side positive. */
      outbound: z
        .strictObject({
          seconds: z.number(),
          headingTrueDeg: z.number().nullable(),
          trackTrueDeg: z.number(),
          trackOffDeg: z.number(),
        })
        .nullable(),
    })
    .nullable(),
  laps: z.array(lapSchema),
  /** The racetrack in still air, at the airspeed of the hold; null where no airspeed is known. */
  stillAir: racetrackSchema.nullable(),
  /** What the wind of all laps together asked for. */
  solved: z.union([racetrackSchema, noRacetrackSchema]).nullable(),
  solvedDoubt: racetrackDoubtSchema.nullable(),
  /** Geometry, not the procedure's protected airspace: time and farthest excursion on the side away from the turns, after the entry. */
  nonHoldingSide: z.strictObject({
    seconds: z.number(),
    farthestNm: z.number(),
    farthestUtc: utc.nullable(),
  }),
  altitude: z
    .strictObject({
      targetFt: z.number().nullable(),
      meanFt: z.number(),
      lowestFt: z.number(),
      highestFt: z.number(),
    })
    .nullable(),
  /** The airspeed against the holding limit of the standard at that height. `indicated` is estimated from the true airspeed and the height. */
  speed: z
    .strictObject({
      trueKt: z.number(),
      indicatedKt: z.number(),
      doubt95Kt: z.number(),
      mostKt: z.number().nullable(),
      citation: z.string(),
    })
    .nullable(),
  wind: windSchema.nullable(),
  /** What could not be told, and why, as codes. */
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});
export type HoldFacts = z.infer<typeof holdFactsSchema>;

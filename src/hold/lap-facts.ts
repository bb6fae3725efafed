/** One lap of a hold in numbers: the schema. */
import { z } from "zod";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import { noRacetrackSchema, racetrackDoubtSchema, racetrackSchema, ruleSchema } from "./racetrack-facts.ts";

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
export const lapSchema = z.strictObject({
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
    /** By how much its time may be otherwise, where the log is silent at an end. */
    unseen: unseenSchema,
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
      /** Likewise. */
      unseen: unseenSchema,
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
      /** The silence of the log that it lies in; the doubt holds what that may hide. Missing where in none. */
      silentS: z.number().optional(),
      /** Track less the inbound course there, right positive. */
      trackErrorDeg: z.number(),
      /** How far past the inbound course, seen from the side of the racetrack, before it came back; never negative. */
      overshootNm: z.number(),
    })
    .nullable(),
  /** How the published inbound course was joined: in time, within the mile before a station only, or never; null without such a leg or a needle. Missing in documents of earlier versions. */
  joined: z.enum(["established", "near-station", "never"]).nullable().optional(),
  /**
   * By the needle on the published inbound course, from established on it to the mile before a station, else to the fix;
   * where it never was established, all of that; null where the course was joined within that mile only. Of full scale, right of the course positive.
   */
  tracking: z
    .strictObject({
      establishedUtc: utc.nullable(),
      seconds: z.number(),
      worstNeedle: z.number(),
      worstAcrossNm: z.number(),
      worstUtc: utc,
      doubt95: z.number(),
      unseen: unseenSchema,
      beyondHalfS: z.number(),
      beyondThreeQuarterS: z.number(),
    })
    .nullable(),
  /** The leg that is timed or measured, less what was asked: longer positive. Null where it was not flown to its end. */
  legOff: z
    .strictObject({
      leg: z.enum(["outbound", "inbound"]),
      seconds: z.number().nullable(),
      distanceNm: z.number().nullable(),
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

/** The facts of one course as flown: numbers, no opinion. */
import { z } from "zod";
import {
  causedExcursionSchema,
  causeSchema,
  joiningSchema,
  reversalsSchema,
  wentOnSchema,
} from "../quantity/excursion-record.ts";
import { variationSchema } from "../quantity/magnetic.ts";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import { altitudeSchema, judgedSchema, partJudgedSchema, trackAngleErrorSchema } from "./fact-parts.ts";

const scaleSchema = z.discriminatedUnion("kind", [
  z.strictObject({ id: z.string(), kind: z.literal("angular"), fullScaleDeg: z.number(), label: z.string() }),
  z.strictObject({ id: z.string(), kind: z.literal("linear"), fullScaleNm: z.number(), label: z.string() }),
]);

/**
 * Facts of a course. Signs: right of course positive, everywhere; the needle goes the other way.
 * `needle` values are deviation over full scale (1 = full). Shares are of the judged time, or of the judged
 * distance where the log has no times. Distances NM, angles degrees.
 */
export const courseFactsSchema = z.strictObject({
  form: z.enum(["to", "from", "leg", "fitted"]),
  fix: z.string().nullable(),
  fromFix: z.string().nullable(),
  courseTrueDeg: z.number(),
  courseMagneticDeg: z.number().nullable(),
  variation: variationSchema,
  scale: scaleSchema,
  /** The judged line: where it begins and ends, for maps. */
  line: z.strictObject({ start: z.tuple([z.number(), z.number()]), end: z.tuple([z.number(), z.number()]) }),
  flownNm: z.number(),
  /** Begins: "established", "start-of-match", "near-station"; ends: "end-of-match", "near-station". */
  judged: judgedSchema,
  part: partJudgedSchema.optional(),
  /** Left by a turn after which the track did not come back, which may have been meant or not: what came after is not judged. Missing where that is not so, or where it was clearly meant. */
  turnedAside: z
    .strictObject({
      utc,
      /** Of the mean track after the turn, right positive. */
      trackErrorDeg: z.number(),
      /** As far as it went beside the course, right positive, and when. */
      farthestNm: z.number(),
      farthestUtc: utc,
    })
    .optional(),
  /** Flown without ever being established on it; missing where it was, without times, and of a fitted line. */
  neverEstablished: z.literal(true).optional(),
  /** The time before it was joined, which is not judged, where that is over a minute, strayed far or drifted from it; null or missing where it is not. */
  beforeJoining: z
    .strictObject({
      seconds: z.number(),
      /** The farthest that it was flown along the course and not toward it, over three quarters of full scale; null where it was not. */
      strayed: z.strictObject({ needle: z.number(), crossTrackNm: z.number() }).nullable(),
      /** ... and the farthest that it went off once it had been within half scale and nearly along, over half scale; null where it did not. A drift, or the way to an intercept. */
      drifted: z
        .strictObject({ needle: z.number(), crossTrackNm: z.number(), utc: utc.nullable() })
        .nullable()
        .optional(),
    })
    .nullable()
    .optional(),
  /** What of the time that the brief gave was flown along the course before it was established, and is not judged; null or missing where nothing was. */
  beforeEstablished: z
    .strictObject({
      windowS: z.number(),
      judgedS: z.number(),
      /** Along the course, the track within 10° of it. */
      alongS: z.number(),
      /** Farthest off then, right positive. */
      worstNeedle: z.number(),
      worstNm: z.number(),
      worstUtc: utc.nullable(),
    })
    .nullable()
    .optional(),
  crossTrack: z.strictObject({
    maxNm: z.number(),
    maxUtc: utc.nullable(),
    meanNm: z.number(),
    rmsNm: z.number(),
    /** Half-width of the 95 % interval of one value, from the smoothed position. */
    doubt95Nm: z.number(),
    unseen: unseenSchema,
  }),
  needle: z.strictObject({
    max: z.number(),
    maxUtc: utc.nullable(),
    /** Right of course positive. Not in documents of earlier versions, like all that is optional here. */
    mean: z.number().optional(),
    doubt95: z.number(),
    unseen: unseenSchema,
    beyondQuarter: z.number(),
    beyondHalf: z.number(),
    beyondThreeQuarter: z.number(),
    beyondFull: z.number(),
  }),
  trackAngleError: trackAngleErrorSchema.nullable(),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  /** Track less heading over the judged span, right positive. */
  drift: z.strictObject({ meanDeg: z.number(), doubt95Deg: z.number() }).nullable(),
  /** Heading less course, right positive: the mean that was flown, and what this wind needed. */
  windCorrection: z
    .strictObject({
      flownDeg: z.number(),
      neededDeg: z.number(),
      /** The mean that was held where the track did not lead back to the course: before a correction, or without need of one. */
      heldDeg: z.number().nullable().optional(),
      doubt95Deg: z.number(),
      headingFlownTrueDeg: z.number(),
      headingNeededTrueDeg: z.number(),
    })
    .nullable(),
  intercept: z
    .strictObject({
      startUtc: utc,
      /** Track less course at the cut, right positive. */
      angleDeg: z.number(),
      startCrossTrackNm: z.number(),
      joinedUtc: utc,
      /** How far past the course before coming back, never negative. */
      overshootNm: z.number(),
      /** ... as a share of full scale there; null within a mile of a station. */
      overshootNeedle: z.number().nullable().optional(),
      overshootUtc: utc.optional(),
      /** How far past the course the turn onto it began; missing where it began before the course or near it. */
      turnBeganPastNm: z.number().optional(),
      wentOn: wentOnSchema.optional(),
      /** The longest silence of the log from the cut until it was joined: then how far past it went may be unseen. */
      silentS: z.number().optional(),
    })
    .nullable(),
  /** Null where no such turn stands out. */
  joining: joiningSchema.nullable(),
  excursions: z.array(causedExcursionSchema),
  /** Of the worst that went wrong, the largest first; empty where nothing did. */
  causes: z.array(causeSchema),
  /** Reversals of the track (or of the estimated heading) beyond what noise makes. */
  reversals: reversalsSchema.nullable(),
  altitude: altitudeSchema.nullable(),
  /** What could not be told, and why, as codes. */
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});

/** The heading that holds the course in that wind, and the cut that rejoins. */
export const whatWouldHaveWorkedSchema = z
  .strictObject({
    headingTrueDeg: z.number(),
    headingMagneticDeg: z.number().nullable(),
    windCorrectionDeg: z.number(),
    doubt95Deg: z.number(),
    /** From the worst point: a cut of so many degrees (right positive) that rejoins in so many miles. */
    rejoin: z
      .strictObject({
        cutDeg: z.number(),
        headingTrueDeg: z.number(),
        distanceNm: z.number(),
        fromUtc: utc,
      })
      .nullable(),
  })
  .nullable();

export type CourseFacts = z.infer<typeof courseFactsSchema>;
export type Excursion = CourseFacts["excursions"][number];
export type WhatWouldHaveWorked = z.infer<typeof whatWouldHaveWorkedSchema>;

/** The facts of how an approach went on and ended: its parts in flown order, the missed approach, the landing. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";
import { silenceSchema } from "./fact-parts.ts";

/** The parts of an approach, in the order in which they can follow each other. */
const SEGMENT_KINDS = [
  /** What led onto the final, up to being established on it. */
  "joining",
  /** Established on the final course, before the final fix. */
  "inbound",
  /** From the final fix (else from where the judged final begins) to the threshold, the climb away or the log's end. */
  "final",
  /** Past the threshold: a low pass or a touch. */
  "past-threshold",
  /** The final left by a turn away, to circle or to leave. */
  "left-final",
  "missed-approach",
  "landing",
  /** The climb after a touch-and-go. */
  "climb-out",
] as const;

export const segmentSchema = z.strictObject({
  kind: z.enum(SEGMENT_KINDS),
  startUtc: utc.nullable(),
  endUtc: utc.nullable(),
  /** Before the threshold, at its first and last row. */
  fromNm: z.number(),
  toNm: z.number(),
});

const missedCourseSchema = z.strictObject({
  trueDeg: z.number(),
  magneticDeg: z.number().nullable(),
  /** Half a minute from the climb on, or from where the turn onto the course was over; null where the log is silent then. */
  track: z
    .strictObject({
      fromUtc: utc,
      toUtc: utc,
      /** False: of a course that takes a turn, where that was never over. */
      turnedOnto: z.boolean(),
      /** Track less course, right positive. */
      meanErrorDeg: z.number(),
      worstErrorDeg: z.number(),
      worstUtc: utc,
      doubt95Deg: z.number(),
    })
    .nullable(),
});

/** The climb away. */
export const missedSchema = z
  .strictObject({
    startUtc: utc,
    /** Begun in a silence of the log: place and height are straight between its ends, and `altimeter95Ft` holds what it may hide. */
    silence: silenceSchema.optional(),
    distanceNm: z.number(),
    altitudeFt: z.number(),
    /** Above the threshold; null where its elevation is not known. */
    heightFt: z.number().nullable(),
    lowestFt: z.number(),
    /** Half-width of the 95 % interval of `altitudeFt` against what the altimeter showed, set at the field. */
    altimeter95Ft: z.number().nullable(),
    /** Flown level until the climb, miles and how long; missing where for less than 12 s. */
    level: z.strictObject({ nm: z.number(), seconds: z.number() }).optional(),
    /** Over the first minute; after a silence that it was begun in, over the first minute that the log shows. */
    climbFpm: z.number(),
    trackTrueDeg: z.number(),
    /** Mean track over the first 30 s less the final course. */
    trackErrorDeg: z.number(),
    maxCrossTrackNm: z.number(),
    /** Against the course that the brief gives the missed approach; null or missing where it gives none. */
    course: missedCourseSchema.nullable().optional(),
    climbedFt: z.number(),
    to: z.string().nullable(),
    /** Nearest that the log came to the fix of the missed approach. */
    nearestToFixNm: z.number().nullable(),
  })
  .nullable();

/** The roll of a touch-and-go and the climb out of it; null or missing where there was none. */
export const touchAndGoSchema = z
  .strictObject({
    /** Slowest on the runway, by GPS. */
    slowestUtc: utc,
    slowestKt: z.number(),
    /** Before the threshold positive: negative on the runway. */
    slowestNm: z.number(),
    climbUtc: utc,
    climbNm: z.number(),
  })
  .nullable()
  .optional();

/** Over the threshold to a landing or a touch-and-go. */
export const landingSchema = z
  .strictObject({
    thresholdUtc: utc,
    thresholdFt: z.number().nullable(),
    /** Null in a silence of the log. */
    groundSpeedKt: z.number().nullable(),
    /** Half-width of the 95 % interval of the height, where the threshold was passed in a silence of the log; with what that may hide. */
    threshold95Ft: z.number().optional(),
    silence: silenceSchema.optional(),
  })
  .nullable();

/** The final left by a turn away before its end; null or missing where it was not. */
export const brokeOffSchema = z
  .strictObject({
    utc,
    distanceNm: z.number(),
    altitudeFt: z.number().nullable(),
    side: z.enum(["left", "right"]),
    /** A landing on the field of the runway that followed it: in the final's direction, the other way, or across. */
    landed: z.strictObject({ utc, way: z.enum(["same", "other-way", "across"]) }).nullable(),
  })
  .nullable()
  .optional();

/** Where the log ends in flight before the threshold; null or missing where it does not. */
export const logEndSchema = z
  .strictObject({ utc, distanceNm: z.number(), altitudeFt: z.number().nullable() })
  .nullable()
  .optional();

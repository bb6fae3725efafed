/** The facts of one approach as flown: numbers, no opinion. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import { gateSchema, needleSchema, placeSchema as place } from "./fact-parts.ts";

/**
 * Facts of an approach. Signs: right of course and above the path positive; needles are deviation over full scale
 * (1 = full) and move the other way; distances are before the threshold, NM; heights ft. Altitudes are corrected by
 * `height.correctionFt`.
 */
export const approachFactsSchema = z.strictObject({
  runway: z.strictObject({
    ident: z.string().nullable(),
    threshold: place,
    end: place,
    elevationFt: z.number(),
    lengthFt: z.number(),
    courseTrueDeg: z.number(),
  }),
  finalCourseTrueDeg: z.number(),
  finalCourseMagneticDeg: z.number().nullable(),
  variation: z.strictObject({
    degrees: z.number(),
    from: z.enum(["station", "model", "written-true", "unknown"]),
    model: z.string().nullable(),
  }),
  guidance: z.strictObject({
    kind: z.enum(["localizer", "vor", "lnav", "lpv", "lnav-vnav", "rnp", "centre-line"]),
    label: z.string(),
    citation: z.string(),
    /** The needle's width was not given, or there was none: a usual one is taken. */
    supposed: z.boolean(),
    halfAngleDeg: z.number().nullable(),
    fullScaleAtThresholdNm: z.number(),
  }),
  finalFix: z
    .strictObject({ ident: z.string(), distanceNm: z.number(), altitudeFt: z.number().nullable() })
    .nullable(),
  /** The final course drawn: from the start of what is measured to the threshold. */
  line: z.strictObject({ start: place, end: place }),
  height: z
    .strictObject({
      /** `runway`, `field`: tied to the elevation where the aircraft stood; `log`: as logged, datum not known. */
      anchored: z.enum(["runway", "field", "log"]),
      correctionFt: z.number(),
      /** At the judged final's end. */
      doubt95Ft: z.number(),
    })
    .nullable(),
  /** What led onto the final: codes. */
  joinedFrom: z.enum(["vectors", "procedure-turn", "arc", "hold", "straight-in", "not-joined"]).nullable(),
  intercept: z
    .strictObject({
      startUtc: utc,
      /** Track less course at the cut. */
      angleDeg: z.number(),
      startCrossTrackNm: z.number(),
      joinedUtc: utc,
      joinedDistanceNm: z.number(),
      overshootNm: z.number(),
      overshootNeedle: z.number(),
      /** Turns of 5° or more, back and forth, in the two minutes after joining. */
      corrections: z.number(),
    })
    .nullable(),
  finalFixPassage: z
    .strictObject({
      utc,
      altitudeFt: z.number().nullable(),
      altitude95Ft: z.number().nullable(),
      crossTrackNm: z.number(),
      needle: z.number(),
      groundSpeedKt: z.number(),
      /** Established on the final course before it. */
      established: z.boolean(),
    })
    .nullable(),
  judged: z.strictObject({
    fromUtc: utc.nullable(),
    toUtc: utc.nullable(),
    fromNm: z.number(),
    toNm: z.number(),
    seconds: z.number().nullable(),
    /** "final-fix", "joined", "start-of-match"; "minimum", "missed-approach", "threshold", "end-of-match". */
    begins: z.string(),
    ends: z.string(),
  }),
  crossTrack: z.strictObject({
    maxNm: z.number(),
    meanNm: z.number(),
    rmsNm: z.number(),
    doubt95Nm: z.number(),
  }),
  needle: needleSchema,
  trackAngleError: z.strictObject({ meanDeg: z.number(), rmsDeg: z.number(), maxDeg: z.number() }).nullable(),
  reversals: z
    .strictObject({
      count: z.number(),
      perMinute: z.number(),
      medianAmplitudeDeg: z.number().nullable(),
      medianPeriodS: z.number().nullable(),
    })
    .nullable(),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  glidePath: z
    .strictObject({
      angleDeg: z.number(),
      crossingFt: z.number(),
      label: z.string(),
      citation: z.string(),
      supposed: z.boolean(),
      needle: needleSchema,
      worstFt: z.number(),
      meanDeg: z.number(),
    })
    .nullable(),
  /** The straight line nearest to the descent that was flown, from the fix (or the last level) down. */
  flownPath: z
    .strictObject({ angleDeg: z.number(), angle95Deg: z.number(), atThresholdFt: z.number() })
    .nullable(),
  descent: z
    .strictObject({
      meanFpm: z.number(),
      mostFpm: z.number(),
      /** From the altitude over the final fix to the threshold crossing height in one go. */
      constant: z.strictObject({ angleDeg: z.number(), feetPerNm: z.number(), fpm: z.number() }).nullable(),
      /** Where a descent at the path's angle (else 3°) from the minimum meets the threshold crossing height. */
      visualDescentPointNm: z.number().nullable(),
      levels: z.array(
        z.strictObject({
          fromUtc: utc,
          toUtc: utc,
          fromNm: z.number(),
          toNm: z.number(),
          altitudeFt: z.number(),
          seconds: z.number(),
        }),
      ),
    })
    .nullable(),
  stepDowns: z.array(
    z.strictObject({
      name: z.string(),
      distanceNm: z.number(),
      limitFt: z.number(),
      passedUtc: utc.nullable(),
      passedFt: z.number().nullable(),
      /** Lowest on the way there, since the one before. */
      lowestFt: z.number().nullable(),
      /** Lowest less limit: negative below it. */
      marginFt: z.number().nullable(),
      doubt95Ft: z.number().nullable(),
    }),
  ),
  minimum: z
    .strictObject({
      kind: z.enum(["decision", "descent"]),
      altitudeFt: z.number(),
      /** First passed on the way down. */
      passedUtc: utc.nullable(),
      passedNm: z.number().nullable(),
      /** Lowest before the climb away; null after a landing, which goes below it by right. */
      lowestFt: z.number().nullable(),
      lowestUtc: utc.nullable(),
      marginFt: z.number().nullable(),
      doubt95Ft: z.number().nullable(),
    })
    .nullable(),
  missedPoint: z.strictObject({ distanceNm: z.number(), passedUtc: utc.nullable() }),
  outcome: z.enum(["landed", "missed", "touch-and-go-or-low-pass", "log-ends", "cannot-tell"]),
  missed: z
    .strictObject({
      startUtc: utc,
      distanceNm: z.number(),
      altitudeFt: z.number(),
      heightFt: z.number(),
      lowestFt: z.number(),
      /** Over the first minute. */
      climbFpm: z.number(),
      trackTrueDeg: z.number(),
      /** Mean track over the first 30 s less the final course. */
      trackErrorDeg: z.number(),
      maxCrossTrackNm: z.number(),
      climbedFt: z.number(),
      to: z.string().nullable(),
      /** Nearest that the log came to the fix of the missed approach. */
      nearestToFixNm: z.number().nullable(),
    })
    .nullable(),
  landing: z
    .strictObject({ thresholdUtc: utc, thresholdFt: z.number().nullable(), groundSpeedKt: z.number() })
    .nullable(),
  gates: z.array(gateSchema),
  /** What stabilised criteria ask for and a track log cannot show. */
  notShown: z.array(z.string()),
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});

/** The heading that holds the final in that wind, and the descent that fits it. */
export const approachAdviceSchema = z
  .strictObject({
    headingTrueDeg: z.number().nullable(),
    headingMagneticDeg: z.number().nullable(),
    windCorrectionDeg: z.number().nullable(),
    /** On the path's angle (else one from the fix to the threshold) at the ground speed flown. */
    descentFpm: z.number(),
    angleDeg: z.number(),
    visualDescentPointNm: z.number().nullable(),
  })
  .nullable();

export type ApproachFacts = z.infer<typeof approachFactsSchema>;
export type ApproachAdvice = z.infer<typeof approachAdviceSchema>;

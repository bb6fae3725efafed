/** The facts of one approach as flown: numbers, no opinion. */
import { z } from "zod";
import {
  causedExcursionSchema,
  causeSchema,
  joiningSchema,
  reversalsSchema,
  wentOnSchema,
} from "../quantity/excursion-record.ts";
import { variationSchema } from "../quantity/magnetic.ts";
import { utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import {
  brokeOffSchema,
  landingSchema,
  logEndSchema,
  missedSchema,
  segmentSchema,
  touchAndGoSchema,
} from "./ending-facts.ts";
import { gateSchema, needleSchema, placeSchema as place, silenceSchema } from "./fact-parts.ts";
import { procedureTurnSchema } from "./procedure-turn-facts.ts";
import {
  descentSchema,
  flownPathSchema,
  glidePathSchema,
  minimumSchema,
  stepDownsSchema,
} from "./vertical-facts.ts";

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
    /** Of the threshold; null where neither given nor told by a roll on the runway. */
    elevationFt: z.number().nullable(),
    lengthFt: z.number(),
    courseTrueDeg: z.number(),
  }),
  finalCourseTrueDeg: z.number(),
  finalCourseMagneticDeg: z.number().nullable(),
  variation: variationSchema,
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
  /** The parts flown, in flown order; `segment` of the series counts them from 0. */
  segments: z.array(segmentSchema),
  /** What led onto the final: codes. */
  joinedFrom: z
    .enum(["vectors", "procedure-turn", "arc", "hold", "circuit", "straight-in", "not-joined"])
    .nullable(),
  /** Null where none led onto the final. */
  procedureTurn: procedureTurnSchema.nullable(),
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
      overshootUtc: utc.optional(),
      wentOn: wentOnSchema.optional(),
      /** The longest silence of the log from the cut until it was joined: then how far past it went may be unseen. */
      silentS: z.number().optional(),
      /** Turns of 5° or more, back and forth, in the two minutes after joining. */
      corrections: z.number(),
    })
    .nullable(),
  finalFixPassage: z
    .strictObject({
      utc,
      altitudeFt: z.number().nullable(),
      altitude95Ft: z.number().nullable(),
      /** The same against what the altimeter showed, set at the field. */
      altimeter95Ft: z.number().nullable(),
      crossTrackNm: z.number(),
      /** Null within a mile of a station. */
      needle: z.number().nullable(),
      /** Half-width of the 95 % interval of the needle, where it was passed in a silence of the log; with what that may hide. */
      needle95: z.number().optional(),
      silence: silenceSchema.optional(),
      /** Null in a silence. */
      groundSpeedKt: z.number().nullable(),
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
    /** "final-fix", "joined", "start-of-match"; "minimum", "missed-approach", "broke-off", "threshold", "end-of-match", "log-silent". */
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
  /** The leading indicator, from established on the final course to the end of what is judged. Not in documents of earlier versions. */
  excursions: z.array(causedExcursionSchema.partial({ causes: true })).optional(),
  /** The turn onto the final; null where none stands out, or a circuit led onto it. Missing in documents of earlier versions, as `causes`. */
  joining: joiningSchema.nullable().optional(),
  /** Of the worst that went wrong on the final, the largest first; empty where nothing did. */
  causes: z.array(causeSchema).optional(),
  reversals: reversalsSchema.nullable(),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  glidePath: glidePathSchema,
  flownPath: flownPathSchema,
  descent: descentSchema,
  stepDowns: stepDownsSchema,
  minimum: minimumSchema,
  missedPoint: z.strictObject({ distanceNm: z.number(), passedUtc: utc.nullable() }),
  /** `touch-and-go`: slowed on the runway as only wheels are, its height as in a roll, then a climb; where level there without so low a speed, `touch-and-go-or-low-pass`. */
  outcome: z.enum([
    "landed",
    "touch-and-go",
    "missed",
    "touch-and-go-or-low-pass",
    "left-final",
    "log-ends",
    "cannot-tell",
  ]),
  brokeOff: brokeOffSchema,
  logEnd: logEndSchema,
  missed: missedSchema,
  /** How long it was level over the runway before the climb away, as in a roll on it; null where not for long. Missing in documents of earlier versions. */
  levelOverRunwayS: z.number().nullable().optional(),
  landing: landingSchema,
  touchAndGo: touchAndGoSchema,
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

/** Whether the wheels were on the runway for certain: a landing, also one that was gone on from. */
export const onWheels = (outcome: ApproachFacts["outcome"]): boolean =>
  outcome === "landed" || outcome === "touch-and-go";

export type ApproachAdvice = z.infer<typeof approachAdviceSchema>;

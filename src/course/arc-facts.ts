/** The facts of one arc as flown: numbers, no opinion. */
import { z } from "zod";
import { causedExcursionSchema } from "../quantity/excursion-record.ts";
import { variationSchema } from "../quantity/magnetic.ts";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import { altitudeSchema, judgedSchema, partJudgedSchema, trackAngleErrorSchema } from "./fact-parts.ts";

/** What the wind did on a stretch, NM a minute away from the station: the wind's part, and what the nose made of it. */
const driftSchema = z.strictObject({
  fromUtc: utc,
  toUtc: utc,
  seconds: z.number(),
  /** Change of the distance from the station, positive outward. */
  byNm: z.number(),
  nmPerMin: z.number(),
  /** What the wind alone would have made; null where it is not known. */
  windNmPerMin: z.number().nullable(),
  /** Heading less tangent over that stretch, right positive: flown, and needed by the wind. */
  flownDeg: z.number().nullable(),
  neededDeg: z.number().nullable(),
  doubt95Deg: z.number().nullable(),
});

/** The turn onto the arc. */
const turnInSchema = z.strictObject({
  utc,
  turnDeg: z.number(),
  rateDegS: z.number(),
  /** How far before the radius it began, along the way flown to it; negative: past it. */
  leadNm: z.number(),
  /** ... and how far it should have for that turn: rate as flown, wind where it is known. Null where no turn leads onto the arc. */
  neededNm: z.number().nullable(),
  /** Off the radius when the turn was over, outside positive. */
  rollOutNm: z.number(),
});

/** The turn off the arc onto the radial at its end. */
const turnOffSchema = z.strictObject({
  utc,
  turnDeg: z.number(),
  rateDegS: z.number(),
  to: z.enum(["inbound", "outbound"]),
  radialTrueDeg: z.number(),
  radialMagneticDeg: z.number().nullable(),
  /** How many degrees of the arc before the radial it began; negative: past it. */
  leadDeg: z.number(),
  /** What that turn needed: rate as flown, wind where it is known; and what a standard-rate turn would have. */
  neededDeg: z.number().nullable(),
  standardRateDeg: z.number().nullable(),
  windUsed: z.boolean(),
  rollOutUtc: utc,
  /** When the turn was over: right of the course along the radial positive. */
  rollOutCrossTrackNm: z.number(),
});

/**
 * Facts of an arc. `deviation` is distance from the station less the radius: outside positive. All else as for
 * courses: angles right positive, distances NM over the ground, shares of the judged time (or distance).
 */
export const arcFactsSchema = z.strictObject({
  fix: z.string(),
  radiusNm: z.number(),
  turns: z.enum(["left", "right"]),
  fromRadialTrueDeg: z.number(),
  fromRadialMagneticDeg: z.number().nullable(),
  toRadialTrueDeg: z.number(),
  toRadialMagneticDeg: z.number().nullable(),
  variation: variationSchema,
  /** The arc as briefed, for maps: latitude and longitude, from its first radial to its last. */
  line: z.array(z.tuple([z.number(), z.number()])),
  station: z.tuple([z.number(), z.number()]),
  sweepDeg: z.number(),
  flownSweepDeg: z.number(),
  flownNm: z.number(),
  /** Begins: "joined", "start-of-match"; ends: "turn-off", "end-of-arc", "end-of-match". */
  judged: judgedSchema,
  part: partJudgedSchema.optional(),
  deviation: z.strictObject({
    maxNm: z.number(),
    maxUtc: utc.nullable(),
    maxRadialTrueDeg: z.number(),
    maxRadialMagneticDeg: z.number().nullable(),
    meanNm: z.number(),
    rmsNm: z.number(),
    doubt95Nm: z.number(),
    unseen: unseenSchema,
    withinQuarterNm: z.number(),
    withinHalfNm: z.number(),
    withinOneNm: z.number(),
  }),
  /** A DME reads the slant: at the mean height so much more. Null where no height is known. */
  dmeReadsMoreNm: z.number().nullable(),
  /** Track less tangent. */
  trackAngleError: trackAngleErrorSchema.nullable(),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  /** Air that moves away from the station, mean over the judged rows, positive outward. */
  windOutKt: z.number().nullable(),
  /** Heading less tangent: the mean that was flown, and what this wind needed. */
  windCorrection: z
    .strictObject({ flownDeg: z.number(), neededDeg: z.number(), doubt95Deg: z.number() })
    .nullable(),
  /** The stretch on which the worst deviation came about; null where it stayed under a quarter of a mile. */
  drift: driftSchema.nullable(),
  /** The leading indicator: right of the arc, against its tangent. Not in documents of earlier versions. */
  excursions: z.array(causedExcursionSchema.partial({ causes: true })).optional(),
  turnIn: turnInSchema.nullable(),
  turnOff: turnOffSchema.nullable(),
  altitude: altitudeSchema.nullable(),
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});

/** Headings that hold the arc in that wind, radial by radial, and where the turn off it should begin. */
export const arcRemedySchema = z
  .strictObject({
    headings: z.array(
      z.strictObject({
        radialTrueDeg: z.number(),
        radialMagneticDeg: z.number().nullable(),
        headingTrueDeg: z.number(),
        headingMagneticDeg: z.number().nullable(),
        correctionDeg: z.number(),
      }),
    ),
    doubt95Deg: z.number(),
    /** For a standard-rate turn the way that was flown; null where there was none. */
    leadRadialTrueDeg: z.number().nullable(),
    leadRadialMagneticDeg: z.number().nullable(),
  })
  .nullable();

export type ArcFacts = z.infer<typeof arcFactsSchema>;
export type ArcRemedy = z.infer<typeof arcRemedySchema>;

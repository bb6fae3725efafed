/** Parts that the facts of an approach are made of: a place, a needle over the final, a gate. */
import { z } from "zod";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";

/** Latitude, longitude. */
export const placeSchema = z.tuple([z.number(), z.number()]);

/** The silence of the log that a moment lies in: how long, and how far before the threshold it begins and ends. */
export const silenceSchema = z.strictObject({ seconds: z.number(), fromNm: z.number(), toNm: z.number() });
export type MomentSilence = z.infer<typeof silenceSchema>;

/** A value with the half-width of its 95 % interval. */
const doubted = z.strictObject({ value: z.number(), doubt95: z.number() });

/** Largest, mean and shares of a needle over the judged final; `max` is signed and the largest in size. */
export const needleSchema = z.strictObject({
  max: z.number(),
  maxUtc: utc.nullable(),
  maxDistanceNm: z.number(),
  mean: z.number(),
  rms: z.number(),
  doubt95: z.number(),
  unseen: unseenSchema,
  beyondHalf: z.number(),
  beyondThreeQuarter: z.number(),
  beyondFull: z.number(),
});

export const gateSchema = z.strictObject({
  /** Above the threshold. */
  heightFt: z.number(),
  /** Null where the height was never passed on the way down. */
  utc: utc.nullable(),
  /** Where it was never passed: how far above it the aircraft stayed on the final, in a silence as low as that allows. Missing elsewhere. */
  nearestFt: z.number().nullable().optional(),
  distanceNm: z.number().nullable(),
  /** The silence of the log in which it was passed; the doubts of needles and rate hold what that may hide. Null or missing where it hides nothing that shows. */
  silentS: z.number().nullable().optional(),
  lateral: doubted.nullable(),
  vertical: doubted.nullable(),
  verticalFpm: z.number().nullable(),
  vertical95Fpm: z.number().nullable(),
  groundSpeedKt: z.number().nullable(),
  /** Ground speed here less that 30 s before. */
  groundSpeedChangeKt: z.number().nullable(),
  /** Largest within 5 s either way, right positive; from the ground track. */
  bankDeg: z.number().nullable(),
  /** Standard deviation of the track over 10 s either way. */
  trackUnsteadyDeg: z.number().nullable(),
  /** From here to the minimum, the missed approach or 50 ft above the threshold: the worst of each. */
  after: z
    .strictObject({
      /** Null where all of it was within a mile of a station. */
      lateral: z.number().nullable(),
      vertical: z.number().nullable(),
      mostSinkFpm: z.number(),
      mostBankDeg: z.number(),
      groundSpeedRangeKt: z.number(),
    })
    .nullable(),
});

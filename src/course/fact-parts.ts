/** Parts that the facts of a course and of an arc share: what is judged, track angle error, heights. */
import { z } from "zod";
import { heightReachedSchema, onPurposeSchema } from "../quantity/height-record.ts";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";

/** The rows that are judged, and why they begin and end where they do, as codes. */
export const judgedSchema = z.strictObject({
  fromUtc: utc.nullable(),
  toUtc: utc.nullable(),
  seconds: z.number().nullable(),
  distanceNm: z.number(),
  shareOf: z.enum(["time", "distance"]),
  begins: z.string(),
  ends: z.string(),
});

/** What was asked and lies before or after what is judged, more than a turn at either end takes; missing where the whole is judged. */
export const partJudgedSchema = z.strictObject({
  /** Of the whole; null where it has no beginning or no end, as a course to a fix. */
  ofNm: z.number().nullable(),
  before: z.strictObject({ nm: z.number(), why: z.enum(["log-begins", "joined-late"]) }).nullable(),
  after: z.strictObject({ nm: z.number(), why: z.enum(["log-ends", "left-early"]) }).nullable(),
});
export type PartJudged = z.infer<typeof partJudgedSchema>;

export const trackAngleErrorSchema = z.strictObject({
  meanDeg: z.number(),
  rmsDeg: z.number(),
  maxDeg: z.number(),
  maxUtc: utc,
  doubt95Deg: z.number(),
});

/** Heights as logged; where it was still on the way to a briefed one at first, from when that was reached. */
export const altitudeSchema = z.strictObject({
  targetFt: z.number().nullable(),
  meanFt: z.number(),
  lowestFt: z.number(),
  highestFt: z.number(),
  /** Half-width of the 95 % interval of a change of height. */
  change95Ft: z.number(),
  /** Farthest from the target, or from the mean. */
  worstFt: z.number(),
  /** Half-width of the 95 % interval of what the altimeter showed then: GPS height is not an altimeter. */
  altimeter95Ft: z.number(),
  worstUtc: utc.nullable(),
  onPurpose: onPurposeSchema,
  reached: heightReachedSchema,
  /** Of half the range, and of the worst off the target. */
  unseenRange: unseenSchema,
  unseenTarget: unseenSchema,
});

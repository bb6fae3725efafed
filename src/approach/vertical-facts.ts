/** The facts of the way down: against a glide path, the line flown, levels, step-downs and the minimum. */
import { z } from "zod";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";
import { needleSchema, silenceSchema } from "./fact-parts.ts";

/** The farthest to one side of the path: positive, with the half-width of its 95 % interval. */
const extreme = z
  .strictObject({
    ft: z.number(),
    doubt95Ft: z.number(),
    distanceNm: z.number(),
    utc: utc.nullable(),
  })
  .nullable();

/** The needle at one moment. */
const moment = z.strictObject({
  needle: z.number(),
  doubt95: z.number(),
  distanceNm: z.number(),
  utc: utc.nullable(),
});

/** Against the glide path, over the judged final. */
export const glidePathSchema = z
  .strictObject({
    angleDeg: z.number(),
    crossingFt: z.number(),
    label: z.string(),
    citation: z.string(),
    supposed: z.boolean(),
    needle: needleSchema,
    worstFt: z.number(),
    meanDeg: z.number(),
    /** Where the needle was farthest off less its doubt, and with its doubt: near the runway heights in doubt move it much. */
    surest: moment,
    widest: moment,
    /** Farthest below the path, and farthest above it at 1,000 ft over the threshold or lower; null where never so. */
    below: extreme,
    aboveLow: extreme,
  })
  .nullable();

/** The straight line nearest to the descent that was flown, from the fix (or the last level) down. */
export const flownPathSchema = z
  .strictObject({ angleDeg: z.number(), angle95Deg: z.number(), atThresholdFt: z.number() })
  .nullable();

/** The way down: rates, and where it was flown level. */
export const descentSchema = z
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
        /** Against what the altimeter showed, set at the field; missing where that is not known. */
        altimeter95Ft: z.number().optional(),
        seconds: z.number(),
      }),
    ),
  })
  .nullable();

/** Heights not to be gone below until past a place on the final; farthest first. */
export const stepDownsSchema = z.array(
  z.strictObject({
    name: z.string(),
    distanceNm: z.number(),
    limitFt: z.number(),
    /** Both null where it was not passed, and in a silence of the log, which is then named. */
    passedUtc: utc.nullable(),
    passedFt: z.number().nullable(),
    silence: silenceSchema.optional(),
    /** Lowest on the way there, since the one before. */
    lowestFt: z.number().nullable(),
    /** Missing in documents of earlier versions. */
    lowestUtc: utc.nullable().optional(),
    /** Lowest less limit: negative below it. */
    marginFt: z.number().nullable(),
    doubt95Ft: z.number().nullable(),
    /** The same against what the altimeter showed, set at the field. */
    altimeter95Ft: z.number().nullable(),
    /** How far below it the aircraft may have come in a silence of the log (negative: still above). */
    unseen: unseenSchema,
  }),
);

/** The decision altitude or the minimum descent altitude, and how near the aircraft came to it. */
export const minimumSchema = z
  .strictObject({
    kind: z.enum(["decision", "descent"]),
    altitudeFt: z.number(),
    /** First passed on the way down. */
    passedUtc: utc.nullable(),
    passedNm: z.number().nullable(),
    /** Passed in a silence of the log; `passedUtc` and `passedNm` are then null. */
    passedIn: silenceSchema.optional(),
    /** Lowest before the climb away; null after a landing, which goes below it by right. */
    lowestFt: z.number().nullable(),
    lowestUtc: utc.nullable(),
    marginFt: z.number().nullable(),
    doubt95Ft: z.number().nullable(),
    /** The same against what the altimeter showed, set at the field. */
    altimeter95Ft: z.number().nullable(),
    /** How far below it the aircraft may have come in a silence of the log (negative: still above): anywhere on the final, and at a decision altitude where the climb began. */
    unseen: unseenSchema,
  })
  .nullable();

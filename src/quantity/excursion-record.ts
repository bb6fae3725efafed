/** An excursion as it stands in a document: the track left the line (A), the needle reached a quarter (B), the pilot corrected (C). */
import { z } from "zod";
import { utcSchema as utc } from "./record.ts";

/** Off a course or a final; of an arc the line is its tangent, the needle's full scale one mile. Right of the line positive. */
const excursionSchema = z.strictObject({
  /** The side that the aircraft went to. */
  side: z.enum(["left", "right"]),
  /** A: the track angle error passed its threshold for good, or led away by less for so long that the needle told of it. */
  trackOffUtc: utc,
  /** Mean track angle error from A to C. */
  trackErrorDeg: z.number(),
  trackTrueDeg: z.number(),
  /** B, or null where the needle was not seen to reach a quarter. */
  quarterUtc: utc.nullable(),
  /** C: first turn back of the right sign, or null where none was seen. */
  correctedUtc: utc.nullable(),
  /** A to B. */
  silentS: z.number().nullable(),
  /** A to C. */
  leadS: z.number().nullable(),
  /** The log fell silent before C was seen: then neither C nor, where B was not seen before, B is told. Missing where it did not. */
  silence: z.strictObject({ fromUtc: utc, seconds: z.number() }).optional(),
  /** Worst distance off the line before it was back, right positive, and the needle's share then. */
  worstCrossTrackNm: z.number(),
  worstNeedle: z.number(),
  worstUtc: utc,
});

/**
 * Why a track stood off. `turned-late`, `turned-early`: the turn onto the line; `rolled-out-off`: its error stood from the roll-out on;
 * `heading-off`: the wind does not explain it; `cannot-tell`: the wind is not known, or not well enough.
 */
export const causeSchema = z.strictObject({
  cause: z.enum([
    "wind-uncorrected",
    "under-corrected",
    "over-corrected",
    "corrected-wrong-way",
    "heading-off",
    "rolled-out-off",
    "turned-late",
    "turned-early",
    "chased",
    "cannot-tell",
  ]),
  /** Of the worst distance, 0 to 1; those of an excursion add up to 1. */
  share: z.number(),
});

/** An excursion with its causes, the largest first. */
export const causedExcursionSchema = excursionSchema.extend({ causes: z.array(causeSchema) });

/** Where and how the turn onto a line ended, right positive. */
export const joiningSchema = z.strictObject({
  rolledOutUtc: utc,
  crossTrackNm: z.number(),
  trackErrorDeg: z.number(),
  turned: z.enum(["in-time", "late", "early"]),
});

/** How far past the line an intercept went on after its turn, before it was joined: NM, share of full scale there, and when. */
export const wentOnSchema = z.strictObject({ nm: z.number(), needle: z.number(), utc });

export type JoiningRecord = z.infer<typeof joiningSchema>;
export type Cause = z.infer<typeof causeSchema>;
export type ExcursionRecord = z.infer<typeof excursionSchema>;

/** Swings of the track from side to side beyond what noise makes: how many, how many a judged minute, and the medians of half a swing and of there and back. */
export const reversalsSchema = z.strictObject({
  count: z.number(),
  perMinute: z.number(),
  medianAmplitudeDeg: z.number().nullable(),
  medianPeriodS: z.number().nullable(),
});
export type ReversalsRecord = z.infer<typeof reversalsSchema>;

/** The times that what is said of an excursion rests on: as far as it was seen, never over a silence. */
export const seenOf = (record: ExcursionRecord) => ({
  fromUtc: record.trackOffUtc,
  toUtc: record.correctedUtc ?? record.silence?.fromUtc ?? record.worstUtc,
});

/** The excursion whose needle went farthest, or null. */
export function worstExcursion<E extends Pick<ExcursionRecord, "worstNeedle">>(
  excursions: readonly E[],
): E | null {
  return excursions.reduce<E | null>(
    (worst, e) => (worst === null || Math.abs(e.worstNeedle) > Math.abs(worst.worstNeedle) ? e : worst),
    null,
  );
}

/** The facts of one descent to a height before a fix: numbers, no opinion. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";

/** A constant rate that would just have met the height, and when it would have had to begin. */
const constantSchema = z.strictObject({
  /** "as-flown": the mean rate flown, level-offs left out; "usual-rate": 500 ft/min; "usual-gradient": 318 ft/NM. */
  basis: z.enum(["as-flown", "usual-rate", "usual-gradient"]),
  downFpm: z.number().nullable(),
  downFtPerNm: z.number(),
  /** Null where the log does not reach back so far, or has no times. */
  beginUtc: utc.nullable(),
  beginToGoNm: z.number().nullable(),
  /** How much later than that the descent was begun; negative: earlier. Null where it was not begun, or cannot be told. */
  lateS: z.number().nullable(),
  lateNm: z.number().nullable(),
});
export type ConstantDescent = z.infer<typeof constantSchema>;

/**
 * Facts of a descent. Rates and gradients are down positive (`…Down…`); heights as the log gives them; distances NM
 * over the ground, along the way flown, to the point where the height is wanted.
 */
export const descentFactsSchema = z.strictObject({
  fix: z.string(),
  toFt: z.number(),
  beforeNm: z.number(),
  /** Where the height was wanted, on the way flown, and the fix itself: latitude and longitude. */
  point: z.tuple([z.number(), z.number()]),
  fixAt: z.tuple([z.number(), z.number()]),
  /** How near the fix was passed. */
  passedNm: z.number(),
  passedUtc: utc.nullable(),
  crossing: z
    .strictObject({
      utc: utc.nullable(),
      altitudeFt: z.number(),
      /** Above the height wanted positive. */
      overFt: z.number(),
      /** Half-width of the 95 % interval of the height as an altimeter would have shown it. */
      doubt95Ft: z.number(),
      /** The silence of the log that the point was passed in; the doubt holds what that may hide. Null or missing where in none. */
      silentS: z.number().nullable().optional(),
      /** What of the doubt is of that silence, or of a shorter step between two points. Missing where nothing shows. */
      unseenFt: z.number().optional(),
    })
    .nullable(),
  /** Null where no descent was begun before the point. */
  began: z
    .strictObject({
      utc: utc.nullable(),
      altitudeFt: z.number(),
      toGoNm: z.number(),
      groundSpeedKt: z.number().nullable(),
      neededDownFpm: z.number().nullable(),
      neededDownFtPerNm: z.number(),
      neededDeg: z.number(),
      /** Begun where the height of the descent before was wanted: both were flown as one. Missing where it was not. */
      afterEarlier: z.boolean().optional(),
      /**
       * Begun in a silence of the log: somewhere between `earliestToGoNm` and `toGoNm`. Then what was needed counts
       * from the first point after it, and so does what was flown. Null or missing where it was seen.
       */
      silence: z
        .strictObject({ seconds: z.number(), fromUtc: utc, earliestToGoNm: z.number() })
        .nullable()
        .optional(),
    })
    .nullable(),
  /** From where it began to where the height was reached, or to the point where it was not; of what lies between silences at both ends. */
  flown: z
    .strictObject({
      lostFt: z.number(),
      seconds: z.number().nullable(),
      distanceNm: z.number(),
      /** Level-offs left out. */
      meanDownFpm: z.number().nullable(),
      meanDownFtPerNm: z.number(),
      steepestDownFpm: z.number().nullable(),
    })
    .nullable(),
  /** First within 100 ft of the height; `toGoNm` negative past the point. Null where that never came. */
  reached: z
    .strictObject({
      utc: utc.nullable(),
      toGoNm: z.number(),
      beforeS: z.number().nullable(),
      /** Reached in a silence of the log: somewhere between `earliestToGoNm` and `toGoNm`. Null or missing where it was seen. */
      silence: z.strictObject({ seconds: z.number(), earliestToGoNm: z.number() }).nullable().optional(),
    })
    .nullable(),
  /** The greatest rate that was needed on the way, half a mile before the point at the latest. */
  mostNeeded: z.strictObject({ downFpm: z.number(), utc }).nullable(),
  /** The lowest before the point, where it was more than 100 ft below the height and below that of the point. Null or missing where none was. */
  lowest: z
    .strictObject({
      utc: utc.nullable(),
      altitudeFt: z.number(),
      underFt: z.number(),
      /** As of the crossing. */
      doubt95Ft: z.number(),
      toGoNm: z.number(),
    })
    .nullable()
    .optional(),
  constant: z.array(constantSchema),
  levelOffs: z.array(
    z.strictObject({ fromUtc: utc, toUtc: utc, seconds: z.number(), altitudeFt: z.number() }),
  ),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});

export type DescentFacts = z.infer<typeof descentFactsSchema>;

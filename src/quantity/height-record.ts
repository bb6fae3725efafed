/** How a briefed height was come to, or that it was climbed or descended all along, as it stands among the facts of exercises flown level. */
import { z } from "zod";
import { utcSchema as utc } from "./record.ts";

const waySchema = z.enum(["climb", "descent"]);

/** It climbed or went down on purpose all along: by much and one way where no height was briefed, and toward the briefed one without reaching it. Missing where it did not. */
export const onPurposeSchema = waySchema.optional();

/** It began still on the way to the briefed height: the heights are those from when the one that was held was come to, or the briefed one was gone through. Missing where it was there from the beginning. */
export const heightReachedSchema = z
  .strictObject({
    way: waySchema,
    /** The height at the beginning. */
    fromFt: z.number(),
    utc: utc.nullable(),
    seconds: z.number().nullable(),
    /** Flown level at another height for a minute and more before that; null where it was not. */
    level: z.strictObject({ altitudeFt: z.number(), seconds: z.number().nullable() }).nullable(),
  })
  .optional();
export type HeightReached = NonNullable<z.infer<typeof heightReachedSchema>>;

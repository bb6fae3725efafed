/** The facts of a course reversal onto the final. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";

/** Turns right positive. Distances NM; those of the roll-out from the threshold and the final course, right positive. */
export const procedureTurnSchema = z.strictObject({
  kind: z.enum(["45/180", "80/260"]),
  /** Of the outbound track, on which it was flown. */
  side: z.enum(["left", "right"]),
  outboundUtc: utc,
  outboundFrom: z.enum(["final-fix", "turned-outbound"]),
  /** Up to the first turn. */
  outboundS: z.number(),
  awayUtc: utc,
  awayTurnDeg: z.number(),
  /** On the leg between the turns; null of an 80/260, which has none. */
  awayTrackTrueDeg: z.number().nullable(),
  awayS: z.number().nullable(),
  backTurnDeg: z.number(),
  farthestNm: z.number(),
  /** The final fix, or the threshold where there is none. */
  farthestFrom: z.string(),
  /** Usual: the procedure's own is not in the brief. */
  limitNm: z.number(),
  /** The longest silence of the log in it: its turns and their times are then between the points on both sides. Missing where there was none. */
  silentS: z.number().optional(),
  /** At the end of the turn back. */
  rollOut: z.strictObject({
    utc,
    trackErrorDeg: z.number(),
    crossTrackNm: z.number(),
    distanceNm: z.number(),
  }),
});

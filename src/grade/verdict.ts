/** A verdict as it stands in the document: one criterion, what was found, how sure that is, and where the limit is written. */
import { z } from "zod";
import { utcSchema as utc } from "../quantity/record.ts";

export const verdictSchema = z.strictObject({
  criterion: z.string(),
  title: z.string(),
  verdict: z.enum(["met", "not met", "cannot tell", "not flown"]),
  /** Why it cannot be told, or what of a flown exercise was not flown, as a code; else null. */
  reason: z.string().nullable(),
  /** Where the criterion itself failed: the error, to be reported. */
  fault: z.string().optional(),
  /** Where only a part of the given time is judged, when it begins. */
  partFromUtc: utc.nullable().optional(),
  /** Where not all laps of a hold could be judged: how many were, of those flown to the fix. */
  laps: z.strictObject({ judged: z.number(), flown: z.number() }).optional(),
  /** Of several legs of a hold, the one whose value this is: in which lap, counted from 1, and whether it was too long or too short. */
  leg: z
    .strictObject({ lap: z.number(), leg: z.enum(["outbound", "inbound"]), off: z.enum(["long", "short"]) })
    .optional(),
  /** The silence of the log that leaves it open, seconds, where that is the reason; null without times. */
  silentS: z.number().nullable().optional(),
  /** The deciding value, with the half-width of its 95 % interval, and its limit; negative on the side that is never out, where one side only is; null where there is none. */
  value: z.number().nullable(),
  /** In documents of earlier versions, whose `value` is 0 on the side that is never out: the value there, negative. */
  toward: z.number().optional(),
  doubt95: z.number().nullable(),
  limit: z.number().nullable(),
  /** Of value, doubt and limit. "share": of full scale; "side": of what has no amount, as the side of a turn. */
  unit: z.enum(["share", "NM", "ft", "ft/min", "kt", "s", "deg", "side"]),
  /** How sure the verdict is, 0 to 1; null where no doubt of an amount says; of a verdict that cannot be told, how probable it is that the limit was kept. */
  confidence: z.number().nullable(),
  /** Time beyond the limit; null where not known. */
  beyondS: z.number().nullable(),
  worstUtc: utc.nullable(),
  citation: z.string(),
});
export type Verdict = z.infer<typeof verdictSchema>;

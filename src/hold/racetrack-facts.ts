/** The racetrack that closes in a wind, and what rules of thumb lead to: the schemas. */
import { z } from "zod";

/** The racetrack that closes in a wind. Corrections: heading less the leg's own direction, right positive. */
export const racetrackSchema = z.strictObject({
  inboundHeadingTrueDeg: z.number(),
  inboundCorrectionDeg: z.number(),
  /** Between the turns. */
  inboundS: z.number(),
  inboundNm: z.number(),
  outboundHeadingTrueDeg: z.number(),
  /** Off the reciprocal of the inbound course. */
  outboundCorrectionDeg: z.number(),
  /** Between the turns. */
  outboundS: z.number(),
  /** From abeam the fix to the inbound turn; null where the fix is never abeam. */
  outboundFromAbeamS: z.number().nullable(),
  /** End of the outbound leg, from the fix: along the inbound course (negative: before the fix) and right of it. */
  outboundEndAlongNm: z.number(),
  outboundEndAcrossNm: z.number(),
  /** Outbound correction over the inbound one; null where the inbound one is under 1 degree. */
  factor: z.number().nullable(),
  turnRateDegS: z.number(),
  bankDeg: z.number(),
  turnRadiusNm: z.number(),
  lapS: z.number(),
  flags: z.array(z.enum(["correction-over-45", "outbound-outside-15-to-180-s"])),
});
export type Racetrack = z.infer<typeof racetrackSchema>;

/** Why nothing closes: no headway on the inbound course, or the turns alone are carried too far. */
export const noRacetrackSchema = z.discriminatedUnion("none", [
  z.strictObject({ none: z.enum(["wind-too-strong", "does-not-close"]) }),
  /** Carried out so far by the turns that the inbound leg takes this long without any outbound leg. */
  z.strictObject({ none: z.literal("inbound-too-short"), leastInboundS: z.number() }),
]);
export type NoRacetrack = z.infer<typeof noRacetrackSchema>;

/** Half-widths of 95 % intervals of the solved racetrack, from the doubt of wind and airspeed. */
export const racetrackDoubtSchema = z.strictObject({
  inboundCorrection95Deg: z.number(),
  outboundCorrection95Deg: z.number(),
  /** Of the outbound leg by the clock. */
  outbound95S: z.number(),
  factor95: z.number().nullable(),
});
export type RacetrackDoubt = z.infer<typeof racetrackDoubtSchema>;

/** What an outbound correction of a whole multiple, timed from wings level, would have led to. */
export const ruleSchema = z.strictObject({
  factor: z.number(),
  outboundHeadingTrueDeg: z.number(),
  outboundS: z.number(),
  /** At the end of the inbound turn, right of the inbound course positive. */
  missNm: z.number(),
  /** From there to the fix along the course; null where the fix is passed already. */
  inboundS: z.number().nullable(),
});
export type RuleOutcome = z.infer<typeof ruleSchema>;

/** What the rules of thumb come to in a wind: once, twice or three times the inbound correction, for a minute. */
import { cosDeg, direction, sinDeg } from "../quantity/angle.ts";
import type { Seconds } from "../quantity/units.ts";
import { KNOT_SECONDS_PER_MILE } from "../wind/index.ts";
import type { RuleOutcome } from "./facts.ts";
import { framed, type HoldQuestion } from "./racetrack-question.ts";

/** The factors that are taught. Three: FAA AIM 5-3-8 j.6(c); one and two: common practice, no source. */
export const RULES = [1, 2, 3] as const;

/**
 * Where a lap comes out that is flown with `factor` times the inbound correction outbound, to the other side, for
 * `seconds` between the turns, turning back onto the inbound heading. Null where no heading holds the inbound course.
 */
export function ruleOutcome(
  question: HoldQuestion,
  factor: number,
  seconds: Seconds = 60,
): RuleOutcome | null {
  const frame = framed(question);
  if (!frame) return null;
  const { air, speed, turning, inbound, inboundSpeed } = frame;
  const outbound = 180 - factor * inbound;
  // the turns lead nowhere through the air: wind for all the time, and the outbound leg through the air
  const along = air.along * (turning + seconds) + speed * cosDeg(outbound) * seconds;
  const across = air.across * (turning + seconds) + speed * sinDeg(outbound) * seconds;
  return {
    factor,
    outboundHeadingTrueDeg: direction(question.inbound + outbound),
    outboundS: seconds,
    missNm: across / KNOT_SECONDS_PER_MILE,
    inboundS: along < 0 ? -along / inboundSpeed : null,
  };
}

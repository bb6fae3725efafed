/** Turns through the air, as the wind wing has them, and the air in the frame of a course. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import type { InFrame, Wind } from "../wind/index.ts";

export {
  bankOfRate,
  type InFrame,
  KNOT_SECONDS_PER_MILE,
  radiusOf,
  rateOfBank,
  secondsToTurn,
  turned,
} from "../wind/index.ts";

/** The velocity of the air in the frame of a course, knots. */
export const airInFrame = (wind: Wind, course: TrueDegrees): InFrame => ({
  along: -wind.speed * cosDeg(wind.from - course),
  across: -wind.speed * sinDeg(wind.from - course),
});

/** How sure a solved racetrack is: the doubt of wind and airspeed carried through the solution. */

import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import { outboundClock } from "../quantity/outbound-clock.ts";
import type { Knots } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import { windOfAir } from "../wind/index.ts";
import type { WindEllipse } from "../wind/wind.ts";
import type { Racetrack, RacetrackDoubt } from "./facts.ts";
import { solveRacetrack } from "./racetrack.ts";
import type { HoldQuestion } from "./racetrack-question.ts";

/** Square root of the 95 % point of chi squared with two degrees of freedom: semi-axis of an ellipse over its standard deviation. */
const ELLIPSE_95 = Math.sqrt(5.991);

/** Half the difference of the solution a standard deviation to both sides; null where one of them has none. */
function change(question: HoldQuestion, east: Knots, north: Knots, speed: Knots) {
  const { wind, trueAirspeed } = question;
  const [plus, minus] = [1, -1].map((sign) => {
    const airEast = -wind.speed * sinDeg(wind.from) + sign * east;
    const airNorth = -wind.speed * cosDeg(wind.from) + sign * north;
    const faster = trueAirspeed + sign * speed;
    if (!(faster > 0)) return null;
    const solved = solveRacetrack({ ...question, wind: windOfAir(airEast, airNorth), trueAirspeed: faster });
    return "none" in solved ? null : solved;
  }) as [Racetrack | null, Racetrack | null];
  if (!plus || !minus) return null;
  const half = (pick: (r: Racetrack) => number) => (pick(plus) - pick(minus)) / 2;
  return {
    inbound: half((r) => r.inboundCorrectionDeg),
    outbound: turnFrom(minus.outboundCorrectionDeg, plus.outboundCorrectionDeg) / 2,
    seconds: half((r) => outboundClock(r).seconds),
    factor: plus.factor === null || minus.factor === null ? null : (plus.factor - minus.factor) / 2,
  };
}

/**
 * Half-widths of 95 % intervals, from the ellipse of the wind and the airspeed's own interval, taken as independent;
 * first order, by differences one standard deviation wide. Null where the doubt reaches winds without a solution.
 */
export function racetrackDoubt(
  question: HoldQuestion,
  ellipse95: WindEllipse,
  trueAirspeed95: Knots,
): RacetrackDoubt | null {
  const { major, minor, majorAxis } = ellipse95;
  const a = major / ELLIPSE_95;
  const b = minor / ELLIPSE_95;
  const parts = [
    change(question, a * sinDeg(majorAxis), a * cosDeg(majorAxis), 0),
    change(question, b * sinDeg(majorAxis + 90), b * cosDeg(majorAxis + 90), 0),
    change(question, 0, 0, trueAirspeed95 / Z95),
  ];
  const known = parts.filter((p) => p !== null);
  if (known.length < parts.length) return null;
  const doubt = (pick: (p: (typeof known)[number]) => number) => Z95 * Math.hypot(...known.map(pick));
  return {
    inboundCorrection95Deg: doubt((p) => p.inbound),
    outboundCorrection95Deg: doubt((p) => p.outbound),
    outbound95S: doubt((p) => p.seconds),
    factor95: known.some((p) => p.factor === null) ? null : doubt((p) => p.factor!),
  };
}

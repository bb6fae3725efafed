/** Means of the true columns over a span, as the truth prints them. */
import { cosDeg, directionOf, sinDeg } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import type { TrueColumns } from "./flight.ts";

export const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** Sums over rows [start, end): mean velocity of the air, of the aircraft through it, and heights. */
export function means(c: TrueColumns, start: number, end: number) {
  let [east, north, tas, altitude, noseEast, noseNorth] = [0, 0, 0, 0, 0, 0];
  for (let i = start; i < end; i++) {
    const heading = c.heading[i]! * RADIANS_PER_DEGREE;
    east += c.airEast[i]!;
    north += c.airNorth[i]!;
    tas += c.trueAirspeed[i]!;
    altitude += c.altitude[i]!;
    noseEast += c.trueAirspeed[i]! * Math.sin(heading);
    noseNorth += c.trueAirspeed[i]! * Math.cos(heading);
  }
  const n = end - start;
  return {
    from: rounded(directionOf(-east, -north), 1),
    speed: rounded(Math.hypot(east, north) / n, 1),
    tas: rounded(tas / n, 1),
    elevation: rounded((altitude / n) * METRES_PER_FOOT, 0),
    heading: rounded(directionOf(noseEast, noseNorth), 1),
    track: rounded(directionOf(noseEast + east, noseNorth + north), 1),
    /** What the wind needs on a course; source: E. Williams, *Aviation Formulary* V1.47, "Wind Triangles". */
    needed: (course: TrueDegrees) => {
      const fromRight = -east * cosDeg(course) + north * sinDeg(course);
      return rounded(Math.asin(fromRight / tas) * DEGREES_PER_RADIAN, 1);
    },
  };
}

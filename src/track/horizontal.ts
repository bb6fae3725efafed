/** The horizontal motion: place, ground velocity and rate of turn with their doubt, from positions and logged velocities. */
import { DEGREES_PER_RADIAN, METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import { axisColumns, type FlightMeasured, longestOf, measuredIn } from "./axes.ts";
import { latitudeOf, longitudeOf } from "./cartesian.ts";
import { type LoggedVelocity, velocityNoise } from "./doppler.ts";
import { drawnVariance } from "./drawn.ts";
import type { MotionColumns } from "./motion.ts";
import { type AxisKind, fitNoise } from "./noise.ts";
import { smoothRun } from "./smoother.ts";

/** The plane of the ellipsoid in three earth-centred axes: the aircraft moves along two. */
const HORIZONTAL: AxisKind = { axes: 3, free: 2, jerkShare: 1, driftShare: 1 };

export function smoothHorizontal(
  seconds: Float64Array,
  place: Float64Array,
  logged: LoggedVelocity | null,
  spans: readonly Span[],
  motion: MotionColumns,
): void {
  const measured: FlightMeasured = {
    seconds,
    position: place,
    extra: drawnVariance(seconds, place, spans),
    velocity: logged?.velocity ?? null,
  };
  const noise = velocityNoise(measured, logged, fitNoise(measured, HORIZONTAL, spans), spans);
  const columns = axisColumns(longestOf(spans), 3, 2);
  const { state, positionVariance, velocityVariance } = columns;
  for (const span of spans) {
    const { start, end } = span;
    smoothRun(columns, measuredIn(span, measured, 3), noise);
    for (let k = start; k < end; k++) {
      const s = (k - start) * 9;
      const x = state[s]!;
      const y = state[s + 1]!;
      const z = state[s + 2]!;
      const latitude = latitudeOf(x, y, z);
      const longitude = longitudeOf(x, y);
      const sinPhi = Math.sin(latitude / DEGREES_PER_RADIAN);
      const cosPhi = Math.cos(latitude / DEGREES_PER_RADIAN);
      const sinLambda = Math.sin(longitude / DEGREES_PER_RADIAN);
      const cosLambda = Math.cos(longitude / DEGREES_PER_RADIAN);
      const outward = (i: number) => state[s + i]! * cosLambda + state[s + i + 1]! * sinLambda;
      const vEast = -state[s + 3]! * sinLambda + state[s + 4]! * cosLambda;
      const vNorth = -outward(3) * sinPhi + state[s + 5]! * cosPhi;
      const aEast = -state[s + 6]! * sinLambda + state[s + 7]! * cosLambda;
      const aNorth = -outward(6) * sinPhi + state[s + 8]! * cosPhi;
      const variance = velocityVariance[k - start]!;
      const speed2 = vEast * vEast + vNorth * vNorth;
      const angle = Math.atan2(vEast, vNorth) * DEGREES_PER_RADIAN;
      motion.latitude[k] = latitude;
      motion.longitude[k] = longitude;
      motion.velocityEast[k] = vEast / METRES_PER_SECOND_PER_KNOT;
      motion.velocityNorth[k] = vNorth / METRES_PER_SECOND_PER_KNOT;
      motion.groundSpeed[k] = Math.sqrt(speed2) / METRES_PER_SECOND_PER_KNOT;
      motion.trackAngle[k] = angle < 0 ? angle + 360 : angle;
      // at rest the direction is noise: its own variance in the divisor keeps the rate finite there
      motion.turnRate[k] =
        ((vNorth * aEast - vEast * aNorth) / (speed2 + 4 * variance + 1e-12)) * DEGREES_PER_RADIAN;
      motion.positionSd[k] = Math.sqrt(Math.max(0, positionVariance[k - start]!));
      motion.velocitySd[k] = Math.sqrt(Math.max(0, variance)) / METRES_PER_SECOND_PER_KNOT;
    }
  }
}

/** From recorded points to motion: position, ground velocity, height and turn rate with their doubt. */
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { toCartesian } from "./cartesian.ts";
import { loggedVelocity } from "./doppler.ts";
import { splitAtGaps } from "./gaps.ts";
import { smoothHorizontal } from "./horizontal.ts";
import type { Motion } from "./motion.ts";
import type { Track } from "./track.ts";
import { smoothVertical } from "./vertical.ts";

/**
 * The smoothed motion of a log; null where fewer than two of its points have a time. Rows are the points with time
 * and place, in order; a point not later than the one before is left out.
 *
 * Method: constant-acceleration Kalman smoother on the earth-centred axes of the ellipsoid, noise fitted from the
 * log. Ground speed is that of the foot on the ellipsoid (at height h it is h / 6371 km less than a receiver at
 * that height would say: 0.1 kt at 3,000 ft and 700 kt). Slow errors of the receiver (metres over minutes) are not
 * in `positionSd`: a log cannot tell them.
 */
export function smoothTrack(track: Track): Motion | null {
  const rows = usableRows(track);
  const n = rows.length;
  if (n < 2) return null;
  const start = track.time[rows[0]!]!;
  const time = new Float64Array(n);
  const seconds = new Float64Array(n);
  const place = new Float64Array(3 * n);
  const height = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const row = rows[k]!;
    time[k] = track.time[row]!;
    seconds[k] = (time[k]! - start) / 1000;
    toCartesian(track.latitude[row]!, track.longitude[row]!, place, 3 * k);
    height[k] = track.altitude[row]! * METRES_PER_FOOT;
  }
  const spans = splitAtGaps(seconds, track.segment, rows);
  const column = () => new Float64Array(n);
  const motion = {
    length: n,
    time,
    latitude: column(),
    longitude: column(),
    altitude: column(),
    velocityEast: column(),
    velocityNorth: column(),
    groundSpeed: column(),
    trackAngle: column(),
    verticalSpeed: column(),
    turnRate: column(),
    positionSd: column(),
    velocitySd: column(),
    spans,
  };
  smoothHorizontal(seconds, place, loggedVelocity(track, rows), spans, motion);
  smoothVertical(seconds, height, spans, motion);
  return motion;
}

function usableRows(track: Track): Int32Array {
  const rows = new Int32Array(track.length);
  let n = 0;
  let last = -Infinity;
  for (let k = 0; k < track.length; k++) {
    const t = track.time[k]!;
    // comparisons with NaN are false, so an unknown time or place is left out too
    if (t > last && Math.abs(track.latitude[k]!) <= 90 && Math.abs(track.longitude[k]!) <= 360) {
      rows[n++] = k;
      last = t;
    }
  }
  return rows.subarray(0, n);
}

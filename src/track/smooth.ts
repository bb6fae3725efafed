/** From recorded points to motion: position, ground velocity, height and turn rate with their doubt. */
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import { axisColumns, type FlightMeasured, measuredIn } from "./axes.ts";
import { latitudeOf, longitudeOf, toCartesian } from "./cartesian.ts";
import { drawnVariance } from "./drawn.ts";
import type { Motion } from "./motion.ts";
import { type AxisKind, fitNoise } from "./noise.ts";
import { smoothRun } from "./smoother.ts";
import type { Track } from "./track.ts";

/** A silence longer than this, s, or than six median intervals, is a gap. */
const GAP_SECONDS = 30;
const GAP_INTERVALS = 6;
/** Where the recorder itself began a new segment, half of that is enough. */
const GAP_SHARE_AT_BREAK = 0.5;
/** The plane of the ellipsoid in three earth-centred axes: the aircraft moves along two. */
const HORIZONTAL: AxisKind = { axes: 3, free: 2, jerkShare: 1, driftShare: 1 };
/** Vertical motion is gentler: jerk density tuned on simulated level-offs. Heights err twice as much: common practice. */
const VERTICAL: AxisKind = { axes: 1, free: 1, jerkShare: 0.1, driftShare: 4 };
/** Height is carried this far from the nearest measured one, s. */
const HEIGHT_REACH_SECONDS = 30;
const FEET_PER_MINUTE = 60 / METRES_PER_FOOT;

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
  smoothHorizontal(seconds, place, spans, motion);
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

/** Runs without a gap. */
function splitAtGaps(seconds: Float64Array, segment: Int32Array, rows: Int32Array): Span[] {
  const steps = Float64Array.from(
    { length: seconds.length - 1 },
    (_, k) => seconds[k + 1]! - seconds[k]!,
  ).sort();
  const limit = Math.max(GAP_SECONDS, GAP_INTERVALS * steps[steps.length >> 1]!);
  const spans: Span[] = [];
  let start = 0;
  for (let k = 1; k < seconds.length; k++) {
    const silence = seconds[k]! - seconds[k - 1]!;
    const broken = segment[rows[k]!] !== segment[rows[k - 1]!];
    if (silence > (broken ? GAP_SHARE_AT_BREAK * limit : limit)) {
      spans.push({ start, end: k });
      start = k;
    }
  }
  spans.push({ start, end: seconds.length });
  return spans;
}

type Columns = { -readonly [K in keyof Motion]: Motion[K] };

function smoothHorizontal(
  seconds: Float64Array,
  place: Float64Array,
  spans: readonly Span[],
  motion: Columns,
): void {
  const measured: FlightMeasured = {
    seconds,
    position: place,
    extra: drawnVariance(seconds, place, spans),
    velocity: null,
  };
  const noise = fitNoise(measured, HORIZONTAL, spans);
  const columns = axisColumns(longest(spans), 3, 2);
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

function smoothVertical(
  seconds: Float64Array,
  height: Float64Array,
  spans: readonly Span[],
  motion: Columns,
): void {
  motion.altitude.fill(NaN);
  motion.verticalSpeed.fill(NaN);
  const known = spans.filter((s) => height.subarray(s.start, s.end).some((h) => !Number.isNaN(h)));
  if (known.length === 0) return;
  const measured: FlightMeasured = { seconds, position: height, extra: null, velocity: null };
  const noise = fitNoise(measured, VERTICAL, known);
  const columns = axisColumns(longest(known), 1, 1);
  for (const span of known) {
    const { start, end } = span;
    smoothRun(columns, measuredIn(span, measured, 1), noise);
    const near = nearHeight(seconds, height, start, end);
    for (let k = start; k < end; k++) {
      if (!near[k - start]) continue;
      const s = (k - start) * 3;
      motion.altitude[k] = columns.state[s]! / METRES_PER_FOOT;
      motion.verticalSpeed[k] = columns.state[s + 1]! * FEET_PER_MINUTE;
    }
  }
}

/** Which rows have a measured height within reach. */
function nearHeight(seconds: Float64Array, height: Float64Array, start: number, end: number): Uint8Array {
  const near = new Uint8Array(end - start);
  for (const step of [1, -1]) {
    let last = NaN;
    for (let i = 0; i < end - start; i++) {
      const k = step > 0 ? start + i : end - 1 - i;
      if (!Number.isNaN(height[k]!)) last = seconds[k]!;
      if (Math.abs(seconds[k]! - last) <= HEIGHT_REACH_SECONDS) near[k - start] = 1;
    }
  }
  return near;
}

const longest = (spans: readonly Span[]): number =>
  spans.reduce((most, s) => Math.max(most, s.end - s.start), 0);

/** Small tracks for tests of cleaning: a flight east at a steady speed, with what one row has wrong. */
import type { Track } from "../../src/track/track.ts";

export interface Row {
  time: number;
  latitude: number;
  longitude: number;
  altitude: number;
}

const START = Date.UTC(2026, 9, 17, 9);
/** Metres in a degree of latitude, near enough for made-up flights. */
const METRES_PER_DEGREE = 111_000;

export function flight(points: number, knots = 100, intervalS = 1): Row[] {
  const step = (knots * (1852 / 3600) * intervalS) / (METRES_PER_DEGREE * Math.cos((35.6 * Math.PI) / 180));
  return Array.from({ length: points }, (_, i) => ({
    time: START + i * intervalS * 1000,
    latitude: 35.6,
    longitude: ((172.3 + i * step + 180) % 360) - 180,
    altitude: 3000,
  }));
}

export function trackOf(rows: readonly Row[]): Track {
  return {
    name: "made",
    kind: "simulated",
    length: rows.length,
    time: Float64Array.from(rows, (r) => r.time),
    latitude: Float64Array.from(rows, (r) => r.latitude),
    longitude: Float64Array.from(rows, (r) => r.longitude),
    altitude: Float64Array.from(rows, (r) => r.altitude),
    segment: new Int32Array(rows.length),
    line: Int32Array.from(rows, (_, i) => i + 1),
    hdop: Float64Array.from(rows, (_, i) => i / 10),
  };
}

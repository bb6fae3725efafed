/** A landing that goes on as a touch-and-go: from where the roll has slowed enough, faster again along the runway, and up. */
import { destination, inverse } from "../../src/geodesy/index.ts";
import type { Track } from "../../src/track/track.ts";

const KNOT = 1852 / 3600;

/** Rows of a second each. `slowest` kt over the ground; then 2.5 kt more every second, and from 65 kt on 600 ft/min up, for two minutes. */
export function awayAgain(track: Track, slowest: number): Track {
  const place = (i: number) => ({ latitude: track.latitude[i]!, longitude: track.longitude[i]! });
  const way = (i: number) => inverse(place(i - 5), place(i));
  const speed = (i: number) => way(i).distance / KNOT / ((track.time[i]! - track.time[i - 5]!) / 1000);
  let last = track.length - 1;
  while (speed(last) < slowest) last--;
  const course = way(last).azimuthAtEnd;
  const [time, latitude, longitude, altitude] = [
    track.time,
    track.latitude,
    track.longitude,
    track.altitude,
  ].map((column) => [...column.subarray(0, last + 1)]) as [number[], number[], number[], number[]];
  let [at, knots, height] = [place(last), slowest, altitude[last]!];
  for (let k = 1; k <= 120; k++) {
    knots = Math.min(75, knots + 2.5);
    height += knots > 65 ? 10 : 0;
    at = destination(at, course, knots * KNOT);
    time.push(track.time[last]! + k * 1000);
    latitude.push(at.latitude);
    longitude.push(at.longitude);
    altitude.push(height);
  }
  const columns = [time, latitude, longitude, altitude].map((column) => Float64Array.from(column));
  return {
    ...track,
    length: time.length,
    time: columns[0]!,
    latitude: columns[1]!,
    longitude: columns[2]!,
    altitude: columns[3]!,
    segment: new Int32Array(time.length),
    line: new Int32Array(time.length),
  };
}

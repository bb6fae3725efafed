/** Courses: the ruler against GeographicLib's exact form and against turf's spherical point-to-line distance. */
import { lineString, point, pointToLineDistance } from "@turf/turf";
import {
  alongAcrossExact,
  courseBetween,
  localPlane,
  measureColumns,
  positionOn,
  variationAt,
} from "../../src/geodesy/index.ts";
import { bestOf, type Line } from "./time.ts";

const NM = 1852;

export default function bench(): Line[] {
  const from = { latitude: 35.6, longitude: 172.3 };
  const to = positionOn(courseBetween(from, { latitude: 36.4, longitude: 174.2 }), 100 * NM);
  const course = courseBetween(from, to);
  const n = 20_000;
  const places = Array.from({ length: n }, (_, i) =>
    positionOn(course, (i / n) * 100 * NM, 3 * NM * Math.sin(i / 700)),
  );
  const latitude = Float64Array.from(places, (p) => p.latitude);
  const longitude = Float64Array.from(places, (p) => p.longitude);
  const line = lineString([
    [from.longitude, from.latitude],
    [to.longitude, to.latitude],
  ]);
  const points = places.map((p) => point([p.longitude, p.latitude]));
  const turf = new Float64Array(n);
  let read = measureColumns(course, latitude, longitude);

  const ours = bestOf(9, () => (read = measureColumns(course, latitude, longitude))) / n;
  const theirs =
    bestOf(5, () => {
      for (let i = 0; i < n; i++) turf[i] = pointToLineDistance(points[i]!, line, { units: "meters" });
    }) / n;
  const exact =
    bestOf(3, () => {
      for (let i = 0; i < n; i += 10) alongAcrossExact(course, places[i]!);
    }) /
    (n / 10);
  let off = 0;
  let miss = 0;
  for (let i = 0; i < n; i++) {
    const truth = Math.abs(3 * NM * Math.sin(i / 700));
    off = Math.max(off, Math.abs(turf[i]! - truth));
    miss = Math.max(miss, Math.abs(Math.abs(read.across[i]!) - truth));
  }
  const plane = localPlane(from);
  const flat = bestOf(5, () => places.forEach((p) => void plane.toPlane(p.latitude, p.longitude))) / n;
  const time = Date.UTC(2026, 9, 17);
  const variation = bestOf(3, () => places.slice(0, 2000).forEach((p) => void variationAt(p, time))) / 2000;
  const times = theirs / ours;
  const us = (seconds: number) => `${(seconds * 1e6).toFixed(2)} us`;
  return [
    { text: `ruler ${us(ours)} a point, off by at most ${(miss * 1000).toFixed(3)} mm across` },
    {
      text: `turf pointToLineDistance ${us(theirs)} a point, off by at most ${off.toFixed(1)} m: ${times.toFixed(1)} times the ruler's time (at least 10 wanted)`,
      ok: times >= 10,
    },
    { text: `exact form ${us(exact)} a point` },
    { text: `local plane ${us(flat)} a point` },
    { text: `variation ${us(variation)} a point` },
  ];
}

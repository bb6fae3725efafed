/** An approach flown by ruler: distance, offset and height second by second become positions by the geodesic itself. */
import { type ApproachMeasured, measureApproach } from "../../src/approach/index.ts";
import type { ApproachExercise, Fix } from "../../src/brief/brief.ts";
import { courseBetween, courseThrough, destination, positionOn } from "../../src/geodesy/index.ts";
import type { Position } from "../../src/geodesy/position.ts";
import { UNKNOWN_VARIATION } from "../../src/quantity/magnetic.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind } from "../../src/wind/index.ts";

const NM = 1852;
const START = Date.UTC(2026, 9, 17, 1);
export const secondsOf = (utc: string): number => (Date.parse(utc) - START) / 1000;

export interface Field {
  readonly threshold: Position;
  readonly course: number;
  readonly elevation: number;
}
export const FIELD: Field = {
  threshold: { latitude: 35.672, longitude: 172.395 },
  course: 221.5,
  elevation: 420,
};
export const LENGTH_M = 1500;

/** A precision approach to a field, final fix 5 NM before the threshold; changes as wanted. */
export function approachTo(field: Field, changes: Partial<ApproachExercise> = {}): ApproachExercise {
  const end = destination(field.threshold, field.course, LENGTH_M);
  const course = courseThrough(field.threshold, courseBetween(field.threshold, end).azimuth);
  const at = positionOn(course, -5 * NM);
  const finalFix: Fix = { ...at, ident: "LUMDO", kind: "waypoint", declination: null, elevation: null };
  return {
    kind: "approach",
    index: 0,
    title: "Approach",
    between: null,
    altitude: null,
    runway: { ident: "22", threshold: field.threshold, end, elevation: field.elevation },
    course,
    magnetic: null,
    variation: UNKNOWN_VARIATION,
    guidance: { kind: "localizer", width: null, antenna: 8000, station: null, rnp: null },
    finalFix,
    finalFixAltitude: field.elevation + 1650,
    glidePath: { angle: 3, crossing: 50 },
    minimum: { kind: "decision", altitude: field.elevation + 200 },
    stepDowns: [],
    missedPoint: 0,
    missedTo: null,
    missedCourse: null,
    ...changes,
  };
}

/** Distance before the threshold and beside the final, NM; height above the threshold, ft. */
export interface Row {
  readonly t: number;
  readonly before: number;
  readonly aside: number;
  readonly height: number;
}

export const EARTH_M = 6_371_000;
/** Height of a straight 3 degree path that crosses the threshold at 50 ft, by the parabola of the earth's curve. */
export const beam = (before: number, angle = 3, crossing = 50): number =>
  crossing + (before * NM * Math.tan((angle * Math.PI) / 180) + (before * NM) ** 2 / (2 * EARTH_M)) / 0.3048;

/** Straight in at `knots` from `from` miles; offset and height by functions of the distance; then a roll to a stop, or nothing. */
export function straightIn(
  from: number,
  aside: (before: number) => number,
  height: (before: number) => number,
  { knots = 90, roll = true, to = -0.15 } = {},
): Row[] {
  const rows: Row[] = [];
  let before = from;
  let t = 0;
  for (; before > to; t++, before -= knots / 3600)
    rows.push({
      t,
      before,
      aside: aside(before),
      height: before > 0 ? height(before) : Math.max(0, height(before)),
    });
  if (!roll) return rows;
  for (
    let v = knots;
    t < 1e6 && rows.at(-1)!.t < rows[0]!.t + 3000 && v >= 5;
    t++, v = Math.max(4.9, v - 3)
  ) {
    before -= v / 3600;
    rows.push({ t, before, aside: 0, height: 0 });
  }
  for (let k = 0; k < 20; k++, t++) rows.push({ t, before, aside: 0, height: 0 });
  return rows;
}

/** Tracks held for so many seconds at 90 kt, degrees right of the final, turns at 3 degrees a second; down a path of 3 degrees where no height is given. */
export function tracks(
  before: number,
  aside: number,
  parts: readonly (readonly [number, number])[],
  height: (row: { readonly t: number; readonly before: number }) => number = ({ before: b }) =>
    Math.min(1650, beam(b)),
): Row[] {
  const rows: Row[] = [];
  let off = parts[0]![0];
  let at = { before, aside };
  for (const [wanted, seconds] of parts)
    for (let k = 0; k < seconds; k++) {
      rows.push({ t: rows.length, ...at, height: height({ t: rows.length, before: at.before }) });
      off += Math.max(-3, Math.min(3, wanted - off));
      const way = 90 / 3600;
      at = {
        before: at.before - way * Math.cos((off * Math.PI) / 180),
        aside: at.aside + way * Math.sin((off * Math.PI) / 180),
      };
    }
  return rows;
}
export function trackOf({ course, runway }: ApproachExercise, rows: readonly Row[], shift = 0): Track {
  const places = rows.map((r) => positionOn(course, -r.before * NM, r.aside * NM));
  return {
    name: "by ruler",
    kind: "simulated",
    length: rows.length,
    time: Float64Array.from(rows, (r) => START + r.t * 1000),
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
    altitude: Float64Array.from(rows, (r) => runway.elevation + r.height + shift),
    segment: new Int32Array(rows.length),
    line: new Int32Array(rows.length),
  };
}

/** `shift`: added to every height of the log, as an unknown datum does. `from`: the row from which it is matched. */
export function measured(
  exercise: ApproachExercise,
  rows: readonly Row[],
  shift = 0,
  from = 0,
): ApproachMeasured {
  const track = trackOf(exercise, rows, shift);
  const motion = smoothTrack(track)!;
  const wind = estimateWind(motion, findLegs(motion), { airspeed: null, winds: [] });
  return measureApproach({ exercise, path: motion, span: { start: from, end: motion.length }, motion, wind });
}

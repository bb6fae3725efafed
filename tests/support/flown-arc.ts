/** An arc flown by ruler: distance and radial are given second by second, and become positions by the geodesic itself. */
import type { ArcExercise } from "../../src/brief/brief.ts";
import { type ArcMeasured, measureArc } from "../../src/course/index.ts";
import { destination } from "../../src/geodesy/index.ts";
import type { Position } from "../../src/geodesy/position.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind } from "../../src/wind/index.ts";

export const START = Date.UTC(2026, 9, 17, 1, 0, 0);

export function arcExercise(
  station: Position,
  fromRadial: number,
  toRadial: number,
  turns: "left" | "right",
  radius = 10,
): ArcExercise {
  return {
    kind: "arc",
    index: 0,
    title: "Arc",
    between: null,
    altitude: null,
    fix: { ...station, ident: "TARNO", kind: "vor", declination: 0, elevation: 0 },
    radius,
    fromRadial,
    toRadial,
    fromMagnetic: fromRadial,
    toMagnetic: toRadial,
    variation: { degrees: 0, from: "station", model: null, dayDegrees: 0 },
    turns,
  };
}

const DEGREES = 180 / Math.PI;
/** Radius of a standard-rate turn at 100 kt, NM. */
const TURN = 100 / ((3 / DEGREES) * 3600);

/**
 * At 100 kt: straight out on the first radial, a standard-rate turn onto the arc, round it at `off(share)` NM outside,
 * a turn inward and straight in on the last radial. Turns are circles on the plane about the station (in still air two
 * circles that touch), so distances from the station are exact. `logged`: the share of the arc after which the log ends.
 */
export function flyArc(
  exercise: ArcExercise,
  off: (share: number) => number,
  timed = true,
  logged = 1,
): { readonly track: Track; readonly measured: ArcMeasured; readonly arcRows: [number, number] } {
  const { fix, radius, fromRadial, toRadial, turns } = exercise;
  const side = turns === "right" ? 1 : -1;
  const sweep = (((side * (toRadial - fromRadial)) % 360) + 360) % 360;
  const step = 100 / 3600;
  const places: Position[] = [];
  /** A place in the frame of a radial: outward, and the way of the arc. */
  const at = (radial: number, out: number, round: number) =>
    places.push(
      destination(fix, radial + side * Math.atan2(round, out) * DEGREES, Math.hypot(out, round) * 1852),
    );
  const reach = (r: number) => Math.sqrt((r - TURN) ** 2 - TURN ** 2);
  const angle = (r: number) => Math.asin(TURN / (r - TURN)) * DEGREES;
  const [r0, r1] = [radius + off(0), radius + off(1)];
  for (let d = radius - 4; d < reach(r0); d += step) at(fromRadial, d, 0);
  const first = places.length;
  // the turn's centre lies square to the radial; it is over where the circle touches the arc
  for (let h = 3; h < 90 + angle(r0); h += 3) {
    const a = h / DEGREES;
    at(fromRadial, reach(r0) + TURN * Math.sin(a), TURN * (1 - Math.cos(a)));
  }
  const [begin, end] = [angle(r0), sweep - angle(r1)];
  const seconds = Math.round(((end - begin) / DEGREES) * radius * 36);
  for (let k = 0; k <= seconds; k++) {
    const radial = fromRadial + side * (begin + ((end - begin) * k) / seconds);
    at(radial, radius + off(k / seconds), 0);
  }
  const last = places.length;
  for (let h = 3; h < 90 + angle(r1); h += 3) {
    const a = (h - angle(r1)) / DEGREES;
    at(toRadial, reach(r1) + TURN * Math.cos(a), -TURN + TURN * Math.sin(a));
  }
  for (let d = reach(r1); d > radius - 4; d -= step) at(toRadial, d, 0);
  const until = logged < 1 ? first + Math.round((last - first) * logged) : last + 35;
  if (logged < 1) places.splice(until);
  const track: Track = {
    name: "by ruler",
    kind: "simulated",
    length: places.length,
    time: Float64Array.from(places, (_, i) => (timed ? START + i * 1000 : Number.NaN)),
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
    altitude: new Float64Array(places.length).fill(6076),
    segment: new Int32Array(places.length),
    line: new Int32Array(places.length),
  };
  const motion = timed ? smoothTrack(track) : null;
  const legs = motion ? findLegs(motion) : [];
  const wind = motion ? estimateWind(motion, legs, { airspeed: null, winds: [] }) : null;
  const path = motion ?? { ...track, time: null };
  const measured = measureArc({
    exercise,
    path,
    span: { start: first, end: until },
    motion,
    legs,
    wind,
  });
  return { track, measured, arcRows: [first, last] };
}

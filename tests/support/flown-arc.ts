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
    variation: { degrees: 0, from: "station", model: null },
    turns,
  };
}

/** At 100 kt: straight out on the first radial to the arc, round it at `off(share)` NM outside, straight in on the last. */
export function flyArc(
  exercise: ArcExercise,
  off: (share: number) => number,
  timed = true,
): { readonly track: Track; readonly measured: ArcMeasured; readonly arcRows: [number, number] } {
  const { fix, radius, fromRadial, toRadial, turns } = exercise;
  const side = turns === "right" ? 1 : -1;
  const sweep = (((side * (toRadial - fromRadial)) % 360) + 360) % 360;
  const step = 100 / 3600;
  const places: Position[] = [];
  const at = (radial: number, miles: number) => places.push(destination(fix, radial, miles * 1852));
  for (let d = radius - 4; d < radius + off(0); d += step) at(fromRadial, d);
  const first = places.length;
  const seconds = Math.round(((sweep * Math.PI) / 180) * radius * 36);
  for (let k = 0; k <= seconds; k++) at(fromRadial + (side * sweep * k) / seconds, radius + off(k / seconds));
  const last = places.length;
  for (let d = radius + off(1); d > radius - 4; d -= step) at(toRadial, d);
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
    span: { start: first - 20, end: last + 20 },
    motion,
    legs,
    wind,
  });
  return { track, measured, arcRows: [first, last] };
}

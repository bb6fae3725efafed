/** A path flown by ruler: straights and standard-rate turns over the ground, one row a second, truth known by construction. */
import { destination } from "../../src/geodesy/index.ts";
import type { Position } from "../../src/geodesy/position.ts";
import { direction, turnFrom } from "../../src/quantity/angle.ts";
import type { Leg } from "../../src/track/leg.ts";

export interface Straight {
  /** Track over the ground, true. */
  readonly track: number;
  readonly nm: number;
  /** The way to turn onto it; the shorter one when not given. */
  readonly turn?: "left" | "right";
}

export interface FlownPathWithTruth {
  readonly time: Float64Array;
  readonly latitude: Float64Array;
  readonly longitude: Float64Array;
  readonly trackAngle: Float64Array;
  readonly legs: readonly Leg[];
  /** Rows of each straight, without the turn onto it. */
  readonly straights: readonly { readonly start: number; readonly end: number }[];
}

/** Metres in a second at 100 kt. */
const STEP = (100 * 1852) / 3600;
/** Standard-rate turn, degrees per second. */
const RATE = 3;

/** `wobble` swings the track to both sides with a period of 40 s, as a chased needle does. */
export function flyPath(
  from: Position,
  start: number,
  straights: readonly Straight[],
  wobble = 0,
): FlownPathWithTruth {
  const rows: { latitude: number; longitude: number; track: number }[] = [];
  const legs: Leg[] = [];
  const spans: { start: number; end: number }[] = [];
  let place: Position = from;
  let track = straights[0]!.track;
  const step = (heading: number) => {
    rows.push({ latitude: place.latitude, longitude: place.longitude, track: direction(heading) });
    place = destination(place, heading, STEP);
  };
  for (const { track: next, nm, turn: way } of straights) {
    const shorter = turnFrom(track, next);
    const turn =
      way === "right" ? direction(next - track) : way === "left" ? -direction(track - next) : shorter;
    const turnStart = rows.length;
    for (let k = 1; k <= Math.abs(turn) / RATE; k++) step(track + Math.sign(turn) * RATE * k);
    if (rows.length > turnStart) {
      legs.push({ kind: "turn", span: { start: turnStart, end: rows.length }, turn });
    }
    const begin = rows.length;
    const count = Math.round((nm * 1852) / STEP);
    for (let k = 0; k < count; k++) step(next + wobble * Math.sin((2 * Math.PI * k) / 40));
    legs.push({ kind: "straight", span: { start: begin, end: rows.length }, turn: 0 });
    spans.push({ start: begin, end: rows.length });
    track = next;
  }
  return {
    time: Float64Array.from(rows, (_, i) => start + i * 1000),
    latitude: Float64Array.from(rows, (r) => r.latitude),
    longitude: Float64Array.from(rows, (r) => r.longitude),
    trackAngle: Float64Array.from(rows, (r) => r.track),
    legs,
    straights: spans,
  };
}

/** Whether an arc about a station led to the turn onto the final. */
import { inverse, localPlane } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_NAUTICAL_MILE, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, DegreesPerSecond, NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";

/** The turn onto the final is quicker than this; an arc of 5 NM and more never is. */
const TURNING: DegreesPerSecond = 1.2;
/** An arc: this long, turned this far by a steady curve of such radii, this near to a circle. Tuned on simulation seeds 1-40. */
const ARC_TIME: Seconds = 170;
const ARC_TURN: AngleSize = 11;
const ARC_RADII: readonly [NauticalMiles, NauticalMiles] = [3, 25];
const ARC_MISS: NauticalMiles = 0.08;
/** ... about a station: no farther from its own mean distance than a flown arc may be (FAA-S-ACS-8C V.A.S6: 1 NM, of which half is left to the wind), with it on the inside, and curved by its distance to within a share. Chosen: a short piece of a circle tells its radius badly. */
const DISTANCE_KEPT: NauticalMiles = 0.5;
const RADIUS_NEAR: Share = 0.4;

/** The rows of the last stretch before the turn onto the final; null where too short for an arc. */
function beforeTurn(motion: Motion, { start: first, end: after }: Span): Span | null {
  let end = after - 1;
  while (end > first && Math.abs(motion.turnRate[end]!) < TURNING) end--;
  while (end > first && Math.abs(motion.turnRate[end]!) > TURNING / 3) end--;
  let start = end;
  while (start > first && motion.time[end]! - motion.time[start]! < ARC_TIME * 1000) start--;
  const long = motion.time[end]! - motion.time[start]! >= (ARC_TIME - 20) * 1000;
  return long && end - start + 1 >= 8 ? { start, end: end + 1 } : null;
}

/** A piece of a circle, right turns positive; null where it is none. Method: least squares of x2 + y2 = 2ax + 2by + c (I. Kasa, 1976). */
function circleOf(
  motion: Motion,
  { start, end }: Span,
): { readonly radius: NauticalMiles; readonly side: number } | null {
  const n = end - start;
  const plane = localPlane({ latitude: motion.latitude[start]!, longitude: motion.longitude[start]! });
  const points = Array.from({ length: n }, (_, k) => {
    const { east, north } = plane.toPlane(motion.latitude[start + k]!, motion.longitude[start + k]!);
    return { x: east / METRES_PER_NAUTICAL_MILE, y: north / METRES_PER_NAUTICAL_MILE };
  });
  const mean = (pick: (p: { x: number; y: number }) => number) => points.reduce((s, p) => s + pick(p), 0) / n;
  const [mx, my] = [mean((p) => p.x), mean((p) => p.y)];
  const of = (pick: (u: number, v: number) => number) => mean((p) => pick(p.x - mx, p.y - my));
  const [uu, uv, vv] = [of((u) => u * u), of((u, v) => u * v), of((_, v) => v * v)];
  const ru = of((u, v) => u * (u * u + v * v)) / 2;
  const rv = of((u, v) => v * (u * u + v * v)) / 2;
  const det = uu * vv - uv * uv;
  if (!(det > 0)) return null;
  const [a, b] = [(ru * vv - rv * uv) / det, (rv * uu - ru * uv) / det];
  const radius = Math.sqrt(a * a + b * b + uu + vv);
  if (!(radius >= ARC_RADII[0] && radius <= ARC_RADII[1])) return null;
  const way = Math.hypot(points[n - 1]!.x - points[0]!.x, points[n - 1]!.y - points[0]!.y);
  const turn = (way / radius) * DEGREES_PER_RADIAN;
  const miss = Math.sqrt(of((u, v) => (Math.hypot(u - a, v - b) - radius) ** 2));
  if (!(turn >= ARC_TURN && miss <= ARC_MISS)) return null;
  return { radius, side: Math.sign(turnFrom(motion.trackAngle[start]!, motion.trackAngle[end - 1]!)) };
}

/** Whether the way before the turn onto the final was part of a circle about one of the stations. */
export function isArc(motion: Motion, before: Span, stations: readonly Position[]): boolean {
  const span = stations.length > 0 ? beforeTurn(motion, before) : null;
  const circle = span && circleOf(motion, span);
  return (
    circle !== null && span !== null && stations.some((station) => isAbout(motion, span, circle, station))
  );
}

function isAbout(
  motion: Motion,
  { start, end }: Span,
  { radius, side }: NonNullable<ReturnType<typeof circleOf>>,
  station: Position,
): boolean {
  let [sum, least, most] = [0, Number.POSITIVE_INFINITY, 0];
  for (let i = start; i < end; i++) {
    const here = { latitude: motion.latitude[i]!, longitude: motion.longitude[i]! };
    const { distance, azimuthAtStart } = inverse(here, station);
    const away = nauticalMilesFromMetres(distance);
    const inside = turnFrom(motion.trackAngle[i]!, azimuthAtStart) * side > 0;
    if (!inside) return false;
    [sum, least, most] = [sum + away, Math.min(least, away), Math.max(most, away)];
  }
  const mean = sum / (end - start);
  return (
    most - mean <= DISTANCE_KEPT &&
    mean - least <= DISTANCE_KEPT &&
    Math.abs(radius - mean) <= RADIUS_NEAR * mean
  );
}

/** A mark on a geodesic: its place, its frame (ahead, right, up) and its curvature radii in space. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { Metres } from "../quantity/units.ts";
import { E2, type GeodesicLine, WGS84 } from "./earth.ts";

/** Metres from the earth's centre (x to 0 N 0 E, z to the pole); t ahead, r right, u up, unit vectors. */
export interface Mark {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly tx: number;
  readonly ty: number;
  readonly tz: number;
  readonly rx: number;
  readonly ry: number;
  readonly rz: number;
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
  /** Radius of normal curvature in the direction of the geodesic, and square to it. */
  readonly rhoAlong: Metres;
  readonly rhoAcross: Metres;
}

/** The mark at a distance along a geodesic of WGS84. Radii: Euler's theorem, 1/rho = cos2(A)/M + sin2(A)/N. */
export function markAt(line: GeodesicLine, along: Metres): Mark {
  const at = line.Position(along);
  const sinPhi = sinDeg(at.lat2!);
  const cosPhi = cosDeg(at.lat2!);
  const sinLambda = sinDeg(at.lon2!);
  const cosLambda = cosDeg(at.lon2!);
  const sinA = sinDeg(at.azi2!);
  const cosA = cosDeg(at.azi2!);
  const w2 = 1 - E2 * sinPhi * sinPhi;
  const N = WGS84.a / Math.sqrt(w2);
  const M = (N * (1 - E2)) / w2;
  const north = [-sinPhi * cosLambda, -sinPhi * sinLambda, cosPhi] as const;
  const east = [-sinLambda, cosLambda, 0] as const;
  return {
    x: N * cosPhi * cosLambda,
    y: N * cosPhi * sinLambda,
    z: N * (1 - E2) * sinPhi,
    tx: cosA * north[0] + sinA * east[0],
    ty: cosA * north[1] + sinA * east[1],
    tz: cosA * north[2],
    rx: cosA * east[0] - sinA * north[0],
    ry: cosA * east[1] - sinA * north[1],
    rz: -sinA * north[2],
    ux: cosPhi * cosLambda,
    uy: cosPhi * sinLambda,
    uz: sinPhi,
    rhoAlong: 1 / ((cosA * cosA) / M + (sinA * sinA) / N),
    rhoAcross: 1 / ((sinA * sinA) / M + (cosA * cosA) / N),
  };
}

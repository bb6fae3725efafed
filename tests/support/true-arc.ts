/** What the simulator's own columns say of an arc over a window of time: distances by GeographicLib, headings as flown. */
import { inverse } from "../../src/geodesy/index.ts";
import type { TrueColumns } from "../../src/simulator/index.ts";

const RADIANS = Math.PI / 180;

export interface TrueOnArc {
  readonly maxNm: number;
  readonly meanNm: number;
  readonly rmsNm: number;
  readonly withinHalf: number;
  /** Heading less tangent, right positive: flown, and needed (E. Williams, Aviation Formulary V1.47, "Wind Triangles"). */
  readonly flownDeg: number;
  readonly neededDeg: number;
}

const wrapped = (d: number) => ((((d + 180) % 360) + 360) % 360) - 180;

/** Rows [from, to], seconds since the start of the flight. */
export function trueOnArc(
  columns: TrueColumns,
  station: { readonly latitude: number; readonly longitude: number },
  radiusNm: number,
  turns: "left" | "right",
  from: number,
  to: number,
): TrueOnArc {
  const off: number[] = [];
  let [flown, needed] = [0, 0];
  for (let i = Math.round(from); i <= Math.round(to); i++) {
    const { distance, azimuthAtEnd } = inverse(station, {
      latitude: columns.latitude[i]!,
      longitude: columns.longitude[i]!,
    });
    off.push(distance / 1852 - radiusNm);
    const tangent = azimuthAtEnd + (turns === "right" ? 90 : -90);
    flown += wrapped(columns.heading[i]! - tangent);
    const toRight =
      columns.airEast[i]! * Math.cos(tangent * RADIANS) - columns.airNorth[i]! * Math.sin(tangent * RADIANS);
    needed -= Math.asin(toRight / columns.trueAirspeed[i]!) / RADIANS;
  }
  const n = off.length;
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  return {
    maxNm: off.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)),
    meanNm: sum(off) / n,
    rmsNm: Math.sqrt(sum(off.map((v) => v * v)) / n),
    withinHalf: off.filter((v) => Math.abs(v) <= 0.5).length / n,
    flownDeg: flown / n,
    neededDeg: needed / n,
  };
}

/** Lines as GeoJSON (RFC 7946): longitude first, cut at the antimeridian. */
import { lineString, multiLineString } from "@turf/turf";

/** Longitude, latitude. */
export type Line = [number, number][];

/** A line cut where it crosses 180° (RFC 7946 section 3.1.9), latitude interpolated at the cut. */
export function cutAtAntimeridian(line: Line): Line[] {
  const pieces: Line[] = [[]];
  line.forEach(([longitude, latitude], i) => {
    const before = line[i - 1];
    if (before && Math.abs(longitude - before[0]) > 180) {
      const side = before[0] > 0 ? 180 : -180;
      const shifted = longitude + 2 * side; // the same place, seen from the side of `before`
      const share = shifted === before[0] ? 0 : (side - before[0]) / (shifted - before[0]);
      const at = before[1] + share * (latitude - before[1]);
      pieces.at(-1)!.push([side, at]);
      pieces.push([[-side, at]]);
    }
    pieces.at(-1)!.push([longitude, latitude]);
  });
  return pieces.filter((piece) => piece.length > 1);
}

export function lineFeature(line: Line, properties: Record<string, unknown>) {
  const pieces = cutAtAntimeridian(line);
  if (pieces.length === 0) return [];
  return [pieces.length === 1 ? lineString(pieces[0]!, properties) : multiLineString(pieces, properties)];
}

export const round = (value: number): number => Number(value.toFixed(7));

/** A place of the document, latitude first, as GeoJSON wants it. */
export const placed = ([latitude, longitude]: readonly [number, number]): [number, number] => [
  round(longitude),
  round(latitude),
];

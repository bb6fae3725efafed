/** Points that are nowhere: outside the coordinates' range, or at zero-zero where a receiver without a fix puts them. */
import type { CleanFinding } from "./clean-finding.ts";
import type { Track } from "./track.ts";

/** A point at zero-zero counts as flown when a neighbour lies within this, degrees: 30 NM, minutes of any flight. */
const ZERO_NEIGHBOUR = 0.5;

const inRange = (latitude: number, longitude: number): boolean =>
  Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180; // false for NaN

/** Latitude beyond 90 or longitude beyond 180 degrees (GPX 1.1, latitudeType and longitudeType; WGS84). */
export function findOutOfRange(track: Track, keep: Uint8Array): CleanFinding {
  const rows: number[] = [];
  for (let i = 0; i < track.length; i++) {
    if (keep[i] === 1 && !inRange(track.latitude[i]!, track.longitude[i]!)) rows.push(i);
  }
  return {
    code: "out-of-range",
    severity: "warning",
    rows,
    dropped: true,
    facts: { latitudeLimitDeg: 90, longitudeLimitDeg: 180 },
  };
}

/** Latitude and longitude both exactly 0, with no neighbour near there: what receivers write without a fix (common practice, no source). */
export function findZeroZero(track: Track, keep: Uint8Array): CleanFinding {
  const { latitude, longitude, length } = track;
  const rows: number[] = [];
  const isZero = (i: number): boolean => latitude[i] === 0 && longitude[i] === 0;
  const isNear = (i: number): boolean =>
    i >= 0 &&
    i < length &&
    Math.abs(latitude[i]!) < ZERO_NEIGHBOUR &&
    Math.abs(longitude[i]!) < ZERO_NEIGHBOUR;
  for (let i = 0; i < length; ) {
    if (!isZero(i)) {
      i++;
      continue;
    }
    let end = i + 1;
    while (end < length && isZero(end)) end++;
    if (!isNear(i - 1) && !isNear(end)) for (let k = i; k < end; k++) if (keep[k] === 1) rows.push(k);
    i = end;
  }
  return {
    code: "zero-zero",
    severity: "warning",
    rows,
    dropped: true,
    facts: { neighbourDeg: ZERO_NEIGHBOUR },
  };
}

/** Refuses a logged speed whose unit cannot be what the format says, by the way that was flown. */
import { inverse } from "../geodesy/index.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Track } from "../track/track.ts";
import type { Tally } from "./tally.ts";

/** Knots over the ground: below it wind and noise make any ratio. Tuned, no source. */
const MOVING_KT = 40;
/** Median of logged speed over ground speed. An indicated airspeed at 20,000 ft in a 40 % headwind is near 0.55 or 2;
 * a wrong unit is off by 1.85, 1.94, 3.6 or a power of ten; between, it cannot be told. Tuned, no source. */
const LEAST_RATIO = 0.4;
const MOST_RATIO = 2.5;
const SPEEDS = ["groundSpeed", "trueAirspeed", "indicatedAirspeed"] as const;

/** Median of a column of speeds over the speed of the way flown, kt; null where the log never moved. */
function ratioToFlown(track: Track, column: Float64Array): number | null {
  const ratios: number[] = [];
  for (let i = 1; i < track.length; i++) {
    const seconds = (track.time[i]! - track.time[i - 1]!) / 1000;
    if (!(seconds > 0) || Number.isNaN(column[i]!)) continue;
    const from = { latitude: track.latitude[i - 1]!, longitude: track.longitude[i - 1]! };
    const to = { latitude: track.latitude[i]!, longitude: track.longitude[i]! };
    const flown = inverse(from, to).distance / seconds / METRES_PER_SECOND_PER_KNOT;
    if (flown > MOVING_KT) ratios.push(column[i]! / flown);
  }
  ratios.sort((a, b) => a - b);
  return ratios[ratios.length >> 1] ?? null;
}

/** Knots of one of each unit that speeds are written in. */
const UNITS = {
  kt: 1,
  "m/s": 1 / METRES_PER_SECOND_PER_KNOT,
  "km/h": 1 / 3.6 / METRES_PER_SECOND_PER_KNOT,
  mph: 0.44704 / METRES_PER_SECOND_PER_KNOT,
};
/** A logged ground speed is that of the way flown; the nearest two units are 15 % apart. Own choice. */
const UNIT_FITS = 0.05;

/**
 * The track with ground speeds in knots, where the format states no unit: the one that makes them the speeds of the way
 * flown (`unit-by-way`). Without them where none does, or nothing moved (`unit-not-found`).
 */
export function speedsByWay(track: Track, tally: Tally): Track {
  const { groundSpeed, ...rest } = track;
  if (groundSpeed === undefined) return track;
  const ratio = ratioToFlown(track, groundSpeed);
  const [unit, knots] = Object.entries(UNITS).find(
    ([, each]) => ratio !== null && Math.abs(ratio * each - 1) < UNIT_FITS,
  ) ?? ["", Number.NaN];
  tally.add(
    unit ? "unit-by-way" : "unit-not-found",
    "note",
    { line: 0, column: 0, point: -1 },
    { facts: unit ? { unit } : {} },
  );
  return unit ? { ...rest, groundSpeed: groundSpeed.map((speed) => speed * knots) } : rest;
}

/** The track without the columns of speed that do not fit: `implausible-column` names each, with the ratio. */
export function plausibleSpeeds(track: Track, tally: Tally): Track {
  const result: { -readonly [K in keyof Track]: Track[K] } = { ...track };
  for (const name of SPEEDS) {
    const column = track[name];
    const ratio = column === undefined ? null : ratioToFlown(track, column);
    if (ratio === null || (ratio >= LEAST_RATIO && ratio <= MOST_RATIO)) continue;
    delete result[name];
    const facts = { column: name, ratio: Math.round(ratio * 1000) / 1000 };
    tally.add("implausible-column", "warning", { line: 0, column: 0, point: -1 }, { facts, detail: name });
  }
  return result;
}

/** The portable GPS: its errors, and which points it writes down. */
import { METRES_PER_FOOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Metres } from "../quantity/units.ts";
import type { Track } from "../track/track.ts";
import type { TrueColumns } from "./flight.ts";
import { gaussMarkov } from "./gauss-markov.ts";
import { draw, randomStream } from "./random.ts";
import type { Logging, Scenario } from "./scenario.ts";
import { radii } from "./step.ts";

/** GPS heights err about twice as much as positions: common practice, no source. */
const HEIGHT_FACTOR = 2;

/** The track log of a true flight. */
export function receive(scenario: Scenario, flight: TrueColumns, seed: number): Track {
  const { receiver, start, logging } = scenario;
  const random = randomStream(seed, "receiver");
  const bias = [0, 1, 2].map(() => gaussMarkov(receiver.bias, 1, random));
  const white = draw(receiver.white, random);
  const error = (axis: number): Metres => bias[axis]!() + white * random.normal();
  const scale = 10 ** receiver.decimals;
  const latitude = new Float64Array(flight.length);
  const longitude = new Float64Array(flight.length);
  const altitude = new Float64Array(flight.length);
  for (let i = 0; i < flight.length; i++) {
    const { meridian, parallel } = radii(flight.latitude[i]!);
    const east = error(0);
    const north = error(1);
    const up = HEIGHT_FACTOR * error(2);
    latitude[i] = Math.round((flight.latitude[i]! + north / meridian / RADIANS_PER_DEGREE) * scale) / scale;
    longitude[i] = Math.round((flight.longitude[i]! + east / parallel / RADIANS_PER_DEGREE) * scale) / scale;
    altitude[i] = Math.round((flight.altitude[i]! * METRES_PER_FOOT + up) * 10) / 10 / METRES_PER_FOOT;
  }
  const rows = chosenRows(logging, latitude, longitude);
  const pick = (column: Float64Array) => Float64Array.from(rows, (i) => column[i]!);
  return {
    name: scenario.name,
    kind: "simulated",
    length: rows.length,
    time: Float64Array.from(rows, (i) => start.time + flight.seconds[i]! * 1000),
    latitude: pick(latitude),
    longitude: pick(longitude),
    altitude: pick(altitude),
    segment: new Int32Array(rows.length),
    line: new Int32Array(rows.length),
  };
}

/** Rows that the receiver writes: each so many seconds, or where the last two no longer point to where it is. */
function chosenRows(logging: Logging, latitude: Float64Array, longitude: Float64Array): number[] {
  const rows: number[] = [];
  if ("every" in logging) {
    for (let i = 0; i < latitude.length; i += logging.every) rows.push(i);
    return rows;
  }
  const { meridian, parallel } = radii(latitude[0] ?? 0);
  const east = (i: number, j: number) => (longitude[j]! - longitude[i]!) * RADIANS_PER_DEGREE * parallel;
  const north = (i: number, j: number) => (latitude[j]! - latitude[i]!) * RADIANS_PER_DEGREE * meridian;
  for (let i = 0; i < latitude.length; i++) {
    const last = rows.at(-1);
    if (last === undefined || i - last >= logging.atMost || i === latitude.length - 1 || i - last < 2) {
      if (last === undefined || i - last >= logging.atMost || i === latitude.length - 1) rows.push(i);
      continue;
    }
    // off the straight line that the first second after the last point began
    const e1 = east(last, last + 1);
    const n1 = north(last, last + 1);
    const e = east(last, i);
    const n = north(last, i);
    if (Math.abs(e * n1 - n * e1) / Math.hypot(e1, n1) > logging.off) rows.push(i);
  }
  return rows;
}

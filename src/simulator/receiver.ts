/** The portable GPS: its errors, and which points it writes down. */
import { METRES_PER_FOOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Metres, Seconds } from "../quantity/units.ts";
import type { Track } from "../track/track.ts";
import { STEP } from "./aircraft.ts";
import type { TrueColumns } from "./flight.ts";
import { gaussMarkov } from "./gauss-markov.ts";
import { draw, randomStream } from "./random.ts";
import type { Logging, Scenario } from "./scenario.ts";
import { radii } from "./step.ts";

/** GPS heights err about twice as much as positions: common practice, no source. */
const HEIGHT_FACTOR = 2;

/** Time between the rows of the true flight that a way of logging needs, seconds. */
export function intervalFor(logging: Logging): Seconds {
  if (!("every" in logging)) return 1;
  const { every } = logging;
  if (!(every > 0 && every % STEP === 0))
    throw new RangeError(`invalid logging: every ${every} s; not a multiple of ${STEP} s`);
  return every % 1 === 0 ? 1 : STEP;
}

/** The track log of a true flight, whose rows are as far apart as `intervalFor` says. */
export function receive(scenario: Scenario, flight: TrueColumns, seed: number): Track {
  const { receiver, start, logging } = scenario;
  const random = randomStream(seed, "receiver");
  const interval = intervalFor(logging);
  const bias = [0, 1, 2].map(() => gaussMarkov(receiver.bias, interval, random));
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
  const rows = chosenRows(logging, interval, latitude, longitude);
  const pick = (column: Float64Array) => Float64Array.from(rows, (i) => column[i]!);
  const plots = "every" in logging ? (logging.plots ?? 0) / interval : 0;
  const drawn = (column: Float64Array) =>
    plots > 0 ? betweenPlots(column, rows, plots).map((v) => Math.round(v * scale) / scale) : pick(column);
  return {
    name: scenario.name,
    kind: "simulated",
    length: rows.length,
    time: Float64Array.from(rows, (i) => start.time + flight.seconds[i]! * 1000),
    latitude: drawn(latitude),
    longitude: drawn(longitude),
    altitude: drawn(altitude),
    segment: new Int32Array(rows.length),
    line: new Int32Array(rows.length),
  };
}

/** What straight lines between every so many rows say at some of them; flights do not cross the antimeridian. */
function betweenPlots(column: Float64Array, rows: readonly number[], plots: number): Float64Array {
  const last = column.length - 1;
  return Float64Array.from(rows, (i) => {
    const from = Math.floor(i / plots) * plots;
    const to = Math.min(last, from + plots);
    const share = to > from ? (i - from) / (to - from) : 0;
    return column[from]! + share * (column[to]! - column[from]!);
  });
}

/** Rows that the receiver writes: each so many seconds, or where the last two no longer point to where it is. */
function chosenRows(
  logging: Logging,
  interval: Seconds,
  latitude: Float64Array,
  longitude: Float64Array,
): number[] {
  const rows: number[] = [];
  if ("every" in logging) {
    for (let i = 0; i < latitude.length; i += logging.every / interval) rows.push(i);
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

/** The doubt of a fix that was found: turns begun late on every lap alike, and logs that draw turns with corners. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { destination, inverse } from "../../src/geodesy/index.ts";
import { fly, type SimulatedFlight, scenarioNamed } from "../../src/simulator/index.ts";
import type { Track } from "../../src/track/track.ts";
import { flySeed, holdsIn, seedsFrom } from "./finding-meter.ts";

const FIRST_SEED = 5400;
const METRES = 1852;
const KNOT = METRES / 3600;

/** Of so many holds that are sure, the share whose fix lies within its stated doubt of a place. */
function share(holds: readonly { readonly offNm: number; readonly fix95: number }[]): number {
  expect(holds.length).toBeGreaterThan(12);
  return holds.filter(({ offNm, fix95 }) => offNm <= fix95).length / holds.length;
}

/** The track as a line through a plot every so many seconds, with a point every 5 s on it, as publishers of radar tracks give it. */
function plotted(track: Track, plotS: number): Track {
  const { time, length } = track;
  const first = time[0]!;
  const n = Math.floor((time[length - 1]! - first) / 5000) + 1;
  const rowAt = (t: number) => Math.min(length - 1, Math.round((t - first) / 1000));
  const via = (column: ArrayLike<number>) =>
    Float64Array.from({ length: n }, (_, i) => {
      const from = Math.floor((i * 5) / plotS) * plotS;
      const [a, b] = [rowAt(first + from * 1000), rowAt(first + (from + plotS) * 1000)];
      return b === a ? column[a]! : column[a]! + ((i * 5 - from) / (b - a)) * (column[b]! - column[a]!);
    });
  return {
    ...track,
    length: n,
    time: Float64Array.from({ length: n }, (_, i) => first + i * 5000),
    latitude: via(track.latitude),
    longitude: via(track.longitude),
    altitude: via(track.altitude),
    segment: new Int32Array(n),
    line: new Int32Array(n),
  };
}

function sureHolds({ truth }: SimulatedFlight, track: Track, lateS: number) {
  const [hold] = truth.truth.holds;
  const found = holdsIn(track).find(
    ({ laps, sure }) =>
      sure && laps.length === hold!.laps.length && Date.parse(hold!.t1) > laps[0]!.times.start,
  );
  if (!found) return [];
  const [latitude, longitude] = hold!.fix;
  const back = lateS * KNOT * 100;
  const fix = destination({ latitude, longitude }, hold!.inboundTrueDeg + 180, back);
  return [{ offNm: inverse(found.fix, fix).distance / METRES, fix95: found.fix95 }];
}

describe("a fix found", () => {
  it.each([0, 4])("lies within its doubt though every turn at 100 kt was begun %i s late", (lateS) => {
    const holds = seedsFrom(FIRST_SEED, 24).flatMap((seed) => {
      const flight = flySeed("hold-any", seed);
      return sureHolds(flight, flight.track, lateS);
    });
    expect(share(holds)).toBeGreaterThanOrEqual(0.9);
  });

  it("lies within its doubt where the log joins plots 20 s apart", () => {
    const holds = seedsFrom(FIRST_SEED, 40).flatMap((seed) => {
      const flight = fly(scenarioNamed("hold-any", { logging: { every: 1 } }), seed);
      return sureHolds(flight, plotted(flight.track, 20), 0);
    });
    expect(share(holds)).toBeGreaterThanOrEqual(0.92);
  });
});

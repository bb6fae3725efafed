/** One meter for the hold finder, for the gate and for the big run: simulated holds against their truth, and flights that hold nowhere. */
import { inverse } from "../../src/geodesy/index.ts";
import { type FoundHold, findHolds, type HoldHints } from "../../src/hold/index.ts";
import { turnFrom } from "../../src/quantity/angle.ts";
import { fly, type SimulatedFlight, scenarioNamed } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";

/** Each seed logs in one of these, in turn. */
const LOGGINGS = [{ every: 1 }, { every: 5 }, { off: 12, atMost: 12 }] as const;

export const flySeed = (name: string, seed: number): SimulatedFlight =>
  fly(scenarioNamed(name, { logging: LOGGINGS[seed % LOGGINGS.length]! }), seed);

export function holdsIn(track: Track, hints: HoldHints = {}): FoundHold[] {
  const motion = smoothTrack(track)!;
  return findHolds(motion, findLegs(motion), hints);
}

const quantile = (values: readonly number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(q * (values.length - 1))] ?? Number.NaN;

type TrueHold = SimulatedFlight["truth"]["truth"]["holds"][number];

/**
 * The truth is what the simulated pilot set out to do. It counts against the finder even where no log could show it:
 * - a flight that happens to pass the fix on its way out, turns back by half a circle and comes to the fix again was
 *   entered directly by the script, and as a parallel entry or a teardrop by its track;
 * - a single lap whose arrival needs next to no turn over the fix is, by its track, a course reversal;
 * - a lap ends abeam the fix, however far aside the wind has carried it.
 */
export class HoldMeter {
  private flights = 0;
  private found = 0;
  private side = 0;
  private laps = 0;
  private entry = 0;
  private sure = 0;
  private insideCourse = 0;
  private readonly fixNm: number[] = [];
  private readonly sureDegrees: number[] = [];
  private readonly legSeconds: number[] = [];
  /** Holds beside the true one. */
  private more = 0;

  flight(name: string, seed: number): void {
    const { track, truth } = flySeed(name, seed);
    const [hold] = truth.truth.holds;
    if (!hold) throw new Error(`${name} ${seed} flew no hold`);
    this.flights++;
    const during = (found: FoundHold) =>
      found.laps.at(-1)!.times.end > Date.parse(hold.t0) && found.laps[0]!.times.start < Date.parse(hold.t1);
    const all = holdsIn(track);
    const one = all.find(during);
    this.more += all.length - (one ? 1 : 0);
    if (one) this.compare(one, hold);
  }

  private compare(found: FoundHold, hold: TrueHold): void {
    this.found++;
    if (found.turns === hold.turn) this.side++;
    if (found.entry === hold.entry) this.entry++;
    const [latitude, longitude] = hold.fix;
    this.fixNm.push(inverse(found.fix, { latitude, longitude }).distance / 1852);
    const off = Math.abs(turnFrom(hold.inboundTrueDeg, found.inbound));
    if (found.sure) {
      this.sure++;
      this.sureDegrees.push(off);
      if (off <= found.inbound95) this.insideCourse++;
    }
    const laps = found.laps.filter((lap) => lap.complete);
    if (laps.length !== hold.laps.length) return;
    this.laps++;
    for (const [i, { times }] of laps.entries()) {
      const { outboundS, inboundS } = hold.laps[i]!;
      this.legSeconds.push(
        Math.abs((times.inboundTurn - times.outbound) / 1000 - outboundS),
        Math.abs((times.end - times.inbound) / 1000 - inboundS),
      );
    }
  }

  /** Shares of all flights; errors: 95 in 100 are smaller. */
  report() {
    const share = (n: number) => n / this.flights;
    return {
      flights: this.flights,
      more: this.more,
      found: share(this.found),
      /** Of those found. */
      side: this.side / this.found,
      laps: share(this.laps),
      entry: share(this.entry),
      sure: share(this.sure),
      fix95Nm: quantile(this.fixNm, 0.95),
      fixMedianNm: quantile(this.fixNm, 0.5),
      sureCourse95Deg: quantile(this.sureDegrees, 0.95),
      sureCourseMedianDeg: quantile(this.sureDegrees, 0.5),
      /** How often the true course lay within the stated doubt. */
      courseInside: this.insideCourse / this.sure,
      leg95S: quantile(this.legSeconds, 0.95),
      legMedianS: quantile(this.legSeconds, 0.5),
    };
  }
}

/** Flights that hold nowhere. */
export const NO_HOLDS = [
  "cross-country",
  "orbits",
  "procedure-turns",
  "s-turns",
  "eights",
  "steep-turns",
  "vectors",
  "rectangular-circuits",
  "narrow-circuits",
  "teardrop-reversals",
  "oval-circuits",
] as const;

/** Flights with a hold found in them that is not there, and how many of those are called doubtful. */
export function falseHolds(
  name: string,
  seeds: readonly number[],
  seen: { readonly heights: boolean; readonly hints: HoldHints } = { heights: true, hints: {} },
): { readonly found: number; readonly maybe: number } {
  let found = 0;
  let maybe = 0;
  for (const seed of seeds) {
    const { track } = flySeed(name, seed);
    const altitude = seen.heights ? track.altitude : track.altitude.map(() => Number.NaN);
    const holds = holdsIn({ ...track, altitude }, seen.hints);
    if (holds.length > 0) found++;
    if (holds.length > 0 && holds.every((hold) => hold.maybeCircuit)) maybe++;
  }
  return { found, maybe };
}

export const seedsFrom = (first: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => first + i);

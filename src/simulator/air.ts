/** The air that the aircraft flies in: wind that varies with time and height, and the air's density. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { FeetMsl, Knots, Seconds } from "../quantity/units.ts";
import { gaussMarkov, type Wander } from "./gauss-markov.ts";
import { type Drawn, draw, type Random } from "./random.ts";

export interface WindModel {
  /** Where the mean wind blows from, true, and its speed in knots, at `altitude`. */
  readonly from: Drawn;
  readonly speed: Drawn;
  readonly altitude: FeetMsl;
  /** Slow change of each component, knots. */
  readonly slow: Wander;
  /** Change with height, linear: rms of the vector in knots per 1,000 ft, drawn once for the flight. */
  readonly shearRms: number;
  /** Change with height as a stated vector instead: knots of air toward east and north per 1,000 ft. */
  readonly shear?: readonly [east: Knots, north: Knots];
  /** Change with height that is not linear: a random walk of each component, knots per square root of 1,000 ft. */
  readonly heightWalk?: Knots;
  readonly gusts: Wander | null;
}

/** The velocity of the air over the ground (toward), knots. `steady` leaves out the gusts: what a pilot can learn and correct. */
export interface Air {
  readonly east: Knots;
  readonly north: Knots;
  readonly steadyEast: Knots;
  readonly steadyNorth: Knots;
}

/** Spacing of the random walk in height, feet, and how far it reaches; beyond, its last value holds. */
const WALK_SPACING = 100;
const WALK_REACH = 40_000;

/** A random walk over height that is zero at `origin`, straight between its points. */
function walkOverHeight(
  perRootThousand: Knots,
  origin: FeetMsl,
  random: Random,
): (altitude: FeetMsl) => Knots {
  if (perRootThousand === 0) return () => 0;
  const size = perRootThousand * Math.sqrt(WALK_SPACING / 1000);
  const walk = [0];
  for (let i = 1; i <= WALK_REACH / WALK_SPACING; i++) walk.push(walk[i - 1]! + size * random.normal());
  const at = (altitude: FeetMsl): Knots => {
    const x = Math.max(0, Math.min(walk.length - 1.001, altitude / WALK_SPACING));
    const i = Math.floor(x);
    return walk[i]! + (x - i) * (walk[i + 1]! - walk[i]!);
  };
  return (altitude) => at(altitude) - at(origin);
}

/** The wind of one flight: each call moves on by `step`. */
export function windField(model: WindModel, step: Seconds, random: Random): (altitude: FeetMsl) => Air {
  const from = draw(model.from, random);
  const speed = draw(model.speed, random);
  const perAxis = model.shearRms / Math.SQRT2;
  const drawnShear = [perAxis * random.normal(), perAxis * random.normal()];
  const [shearEast, shearNorth] = model.shear ?? drawnShear;
  const slowEast = gaussMarkov(model.slow, step, random);
  const slowNorth = gaussMarkov(model.slow, step, random);
  const walkEast = walkOverHeight(model.heightWalk ?? 0, model.altitude, random);
  const walkNorth = walkOverHeight(model.heightWalk ?? 0, model.altitude, random);
  const gustEast = model.gusts && gaussMarkov(model.gusts, step, random);
  const gustNorth = model.gusts && gaussMarkov(model.gusts, step, random);
  return (altitude) => {
    const thousands = (altitude - model.altitude) / 1000;
    const steadyEast = -speed * sinDeg(from) + slowEast() + shearEast! * thousands + walkEast(altitude);
    const steadyNorth = -speed * cosDeg(from) + slowNorth() + shearNorth! * thousands + walkNorth(altitude);
    return {
      steadyEast,
      steadyNorth,
      east: steadyEast + (gustEast?.() ?? 0),
      north: steadyNorth + (gustNorth?.() ?? 0),
    };
  };
}

/**
 * Density of the standard atmosphere over that at sea level, to 36,089 ft.
 * Source: *U.S. Standard Atmosphere, 1976*, part 1, with its lapse of 6.5 K/km from 288.15 K: the factor per foot is
 * 0.0065 K/m * 0.3048 m / 288.15 K, the exponent g0 M / (R L) - 1 = 4.25588.
 */
export const densityRatio = (altitude: FeetMsl): number =>
  (1 - (0.0065 * 0.3048 * altitude) / 288.15) ** 4.25588;

/** The air that the aircraft flies in: wind that varies with time and height, and the air's density. */
import { cosDeg, sinDeg } from "../quantity/angle.ts";
import type { FeetMsl, Knots, Seconds } from "../quantity/units.ts";
import { gaussMarkov, type Wander } from "./gaussMarkov.ts";
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
  readonly gusts: Wander | null;
}

/** The velocity of the air over the ground (toward), knots. `steady` leaves out the gusts: what a pilot can learn and correct. */
export interface Air {
  readonly east: Knots;
  readonly north: Knots;
  readonly steadyEast: Knots;
  readonly steadyNorth: Knots;
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
  const gustEast = model.gusts && gaussMarkov(model.gusts, step, random);
  const gustNorth = model.gusts && gaussMarkov(model.gusts, step, random);
  return (altitude) => {
    const thousands = (altitude - model.altitude) / 1000;
    const steadyEast = -speed * sinDeg(from) + slowEast() + shearEast! * thousands;
    const steadyNorth = -speed * cosDeg(from) + slowNorth() + shearNorth! * thousands;
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

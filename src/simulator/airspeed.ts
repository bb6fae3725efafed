/** The true airspeed: what the pilot sets, and what the air and the turns make of it. */
import type { DegreesPerSecond, FeetMsl, Knots, Seconds } from "../quantity/units.ts";
import { densityRatio } from "./air.ts";
import { gaussMarkov, type Wander } from "./gauss-markov.ts";
import { type Drawn, draw, type Random } from "./random.ts";

export interface AirspeedModel {
  /** Knots, true, at the height where the flight begins. */
  readonly trueAirspeed: Drawn;
  readonly wander: Wander;
  /** Knots lost in a turn at 3 degrees per second, in proportion in others. */
  readonly lostInTurns: Drawn;
  /** True: the indicated airspeed is held, so the true one grows by about 1.5 % per 1,000 ft. */
  readonly heldIndicated: boolean;
}

/** Change of speed, tuned to the rate of regime changes in light aircraft: 0.5 kt/s, common practice, no source. */
const CHANGE_RATE = 0.5;
/** How soon speed bleeds off in a turn and comes back, seconds; tuned to look like light aircraft, no source. */
const BLEED_TIME = 5;

export interface Airspeed {
  /** The speed one step later. */
  next(altitude: FeetMsl, turnRate: DegreesPerSecond): Knots;
  /** Sets another speed, by a share of the first one; it is reached at 0.5 kt/s. */
  set(share: number): void;
}

export function airspeed(model: AirspeedModel, start: FeetMsl, step: Seconds, random: Random): Airspeed {
  const first = draw(model.trueAirspeed, random);
  const lost = draw(model.lostInTurns, random);
  const wander = gaussMarkov(model.wander, step, random);
  const densityAtStart = densityRatio(start);
  let wanted = first;
  let level = first;
  let bled = 0;
  return {
    set(share) {
      if (!(share > 0.3 && share < 3)) throw new RangeError(`invalid share of airspeed: ${share}`);
      wanted = first * share;
    },
    next(altitude, turnRate) {
      const change = CHANGE_RATE * step;
      level += Math.max(-change, Math.min(change, wanted - level));
      bled += ((lost * Math.abs(turnRate)) / 3 - bled) * (step / BLEED_TIME);
      const growth = model.heldIndicated ? Math.sqrt(densityAtStart / densityRatio(altitude)) : 1;
      return (level + wander() - bled) * growth;
    },
  };
}

/** Noise that remembers: a stationary first-order Gauss-Markov process. */
import type { Seconds } from "../quantity/units.ts";
import { type Drawn, draw, type Random } from "./random.ts";

/** Standard deviation, in the unit of the quantity, and correlation time. */
export interface Wander {
  readonly sd: Drawn;
  readonly time: Drawn;
}

/**
 * A function that gives the next value of the process, one step later each time. It starts in its stationary state.
 * Method: A. Gelb (ed.), *Applied Optimal Estimation*, 1974, section 3.8 (exact discrete form, from memory).
 */
export function gaussMarkov(wander: Wander, step: Seconds, random: Random): () => number {
  const sd = draw(wander.sd, random);
  const time = draw(wander.time, random);
  if (!(sd >= 0)) throw new RangeError(`invalid standard deviation: ${sd}`);
  if (!(time > 0)) throw new RangeError(`invalid correlation time: ${time}`);
  const keep = Math.exp(-step / time);
  const fresh = sd * Math.sqrt(1 - keep * keep);
  let value = sd * random.normal();
  return () => {
    value = keep * value + fresh * random.normal();
    return value;
  };
}

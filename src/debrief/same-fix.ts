/** Which holds of a brief are at one fix. */
import type { HoldExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";

/** Fixes of a brief so near to each other are the same. Chosen: what rounding does to places. */
const SAME_FIX: NauticalMiles = 0.1;

export const atSameFix = (one: HoldExercise, other: HoldExercise): boolean =>
  nauticalMilesFromMetres(inverse(one.fix, other.fix).distance) <= SAME_FIX;

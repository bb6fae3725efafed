/** Turns through the air, as the wind wing has them. */
export {
  bankOfRate,
  type InFrame,
  KNOT_SECONDS_PER_MILE,
  radiusOf,
  rateOfBank,
  secondsToTurn,
  turned,
} from "../wind/index.ts";

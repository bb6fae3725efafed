/** The door of the wind wing: the estimator, the wind triangle and the velocity circle. */
export { trueOverEquivalent } from "./atmosphere.ts";
export { type WindAtHeight, windByHeight } from "./by-height.ts";
export { circleOfThree, fitCircle, fromThreeHeadings, type VelocityCircle } from "./circle.ts";
export {
  type CorrectionMeasured,
  type HeadedRows,
  measureCorrection,
  neededCorrection,
} from "./correction.ts";
export { estimateWind, type WindPriors } from "./estimate.ts";
export { knownAlongOnly, windOver } from "./fact.ts";
export { type MeasuredAir, measuredAir } from "./measured.ts";
export {
  type AirVector,
  type GroundVector,
  groundOf,
  headingForCourse,
  type Wind,
  windBetween,
  windComponents,
  windOfAir,
} from "./triangle.ts";
export {
  airInFrame,
  bankOfRate,
  type InFrame,
  KNOT_SECONDS_PER_MILE,
  radiusOf,
  rateOfBank,
  secondsToTurn,
  turned,
} from "./turning.ts";
export { windRecord } from "./write.ts";

/** The variances of wind and airspeed at each fact, from the last pass: only those that are asked for, and once. */
import type { FactSmoother } from "./filter.ts";
import { N } from "./state.ts";

/** A copy at hand for the inner loops: looking up an imported value there costs time. */
const W: number = N;

/**
 * Fills the variance columns of the smoother. What is asked for is a weighed sum w of the states, east wind, north wind
 * or airspeed, and its variance is w'Pw less r'Mr, r = Pw: P predicted covariance, M adjoint of the backward pass.
 */
export function settle(smoother: FactSmoother): void {
  const { facts, predictedCovariance: p, adjointMatrix: m } = smoother;
  const east = new Float64Array(W);
  const north = new Float64Array(W);
  const air = new Float64Array(W);
  for (let i = 0; i < facts.count; i++) {
    const thousands = facts.thousands[i]!;
    const growth = facts.growth[i]!;
    const share = facts.wanderShare[i]!;
    const turning = facts.turning[i]!;
    for (let j = 0; j < W; j++) {
      const c = (i * W + j) * W;
      east[j] = p[c]! + p[c + 2]! + thousands * p[c + 7]!;
      north[j] = p[c + 1]! + p[c + 3]! + thousands * p[c + 8]!;
      air[j] = growth * p[c + 4]! + share * p[c + 5]! - turning * p[c + 6]! + thousands * p[c + 9]!;
    }
    let ee = east[0]! + east[2]! + thousands * east[7]!;
    let nn = north[1]! + north[3]! + thousands * north[8]!;
    let en = east[1]! + east[3]! + thousands * east[8]!;
    let aa = growth * air[4]! + share * air[5]! - turning * air[6]! + thousands * air[9]!;
    for (let j = 0; j < W; j++) {
      const c = (i * W + j) * W;
      let [e, n, a] = [0, 0, 0];
      for (let k = 0; k < W; k++) {
        const v = m[c + k]!;
        e += v * east[k]!;
        n += v * north[k]!;
        a += v * air[k]!;
      }
      ee -= east[j]! * e;
      nn -= north[j]! * n;
      en -= north[j]! * e;
      aa -= air[j]! * a;
    }
    smoother.varianceEast[i] = Math.max(0, ee);
    smoother.varianceNorth[i] = Math.max(0, nn);
    smoother.covariance[i] = en;
    smoother.varianceAirspeed[i] = Math.max(0, aa);
  }
}

/** The variances of wind and airspeed at each fact, from the last pass: only those that are asked for, and once. */
import type { FactSmoother } from "./filter.ts";
import { N } from "./state.ts";

/** Fills the variance columns of the smoother. */
export function settle(smoother: FactSmoother): void {
  const { facts, predictedCovariance, adjointMatrix } = smoother;
  const rows = [new Float64Array(N), new Float64Array(N), new Float64Array(N)];
  const v = new Float64Array(N);
  for (let i = 0; i < facts.count; i++) {
    const c = i * N * N;
    const weights = [
      [1, 0, 1, 0, 0, 0, 0, facts.thousands[i]!, 0],
      [0, 1, 0, 1, 0, 0, 0, 0, facts.thousands[i]!],
      [0, 0, 0, 0, facts.growth[i]!, facts.wanderShare[i]!, -facts.turning[i]!, 0, 0],
    ];
    const value = (a: number, b: number): number => {
      let sum = 0;
      const ra = rows[a]!;
      const wb = weights[b]!;
      for (let j = 0; j < N; j++) sum += ra[j]! * wb[j]!;
      // less ra' M rb
      for (let j = 0; j < N; j++) {
        let t = 0;
        for (let k = 0; k < N; k++) t += adjointMatrix[c + j * N + k]! * rows[b]![k]!;
        v[j] = t;
      }
      for (let j = 0; j < N; j++) sum -= ra[j]! * v[j]!;
      return sum;
    };
    for (let a = 0; a < 3; a++) {
      for (let j = 0; j < N; j++) {
        let sum = 0;
        for (let k = 0; k < N; k++) sum += predictedCovariance[c + j * N + k]! * weights[a]![k]!;
        rows[a]![j] = sum;
      }
    }
    smoother.varianceEast[i] = Math.max(0, value(0, 0));
    smoother.varianceNorth[i] = Math.max(0, value(1, 1));
    smoother.covariance[i] = value(0, 1);
    smoother.varianceAirspeed[i] = Math.max(0, value(2, 2));
  }
}

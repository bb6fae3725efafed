/**
 * The backward pass: the Rauch-Tung-Striebel smoother in its modified Bryson-Frazier form, which inverts nothing.
 *
 * An adjoint vector and matrix run back through the measurements and steps of the forward pass; the smoothed state is
 * the predicted one less the predicted covariance times the adjoint.
 * Source: Bierman, Factorization Methods for Discrete Sequential Estimation, 1977, chapter X.
 */
import type { AxisColumns, AxisNoise, Measured } from "./axes.ts";

/** Smooths what `filterForward` left in the columns. */
export function smoothBackward(columns: AxisColumns, { seconds, count }: Measured, noise: AxisNoise): void {
  const { axes, free, state, covariance, positionInnovation, velocityInnovation, positionWeight } = columns;
  const { velocityWeight, positionVariance, velocityVariance, jerkShape, jerkShown } = columns;
  const adjoint = new Float64Array(3 * axes);
  // adjoint matrix, symmetric: pp, pv, pa, vv, va, aa
  let lpp = 0;
  let lpv = 0;
  let lpa = 0;
  let lvv = 0;
  let lva = 0;
  let laa = 0;
  for (let k = count - 1; k >= 0; k--) {
    const c = k * 6;
    const pp = covariance[c]!;
    const pv = covariance[c + 1]!;
    const pa = covariance[c + 2]!;
    const vv = covariance[c + 3]!;
    const va = covariance[c + 4]!;
    const aa = covariance[c + 5]!;
    const w = positionWeight[k]!;
    const u = velocityWeight[k]!;
    if (u > 0) {
      // through the measured velocity: L <- C' L C + h h'/S with C = I - K h', K from the covariance after the position
      const kp = (pv - pp * pv * w) * u;
      const kv = (vv - pv * pv * w) * u;
      const ka = (va - pv * pa * w) * u;
      const mp = lpp * kp + lpv * kv + lpa * ka;
      const mv = lpv * kp + lvv * kv + lva * ka;
      const ma = lpa * kp + lva * kv + laa * ka;
      lvv += u - 2 * mv + kp * mp + kv * mv + ka * ma;
      lpv -= mp;
      lva -= ma;
      for (let i = 0; i < axes; i++) {
        const fall = kp * adjoint[i]! + kv * adjoint[axes + i]! + ka * adjoint[2 * axes + i]!;
        adjoint[axes + i] = adjoint[axes + i]! - fall - velocityInnovation[k * axes + i]! * u;
      }
    }
    if (w > 0) {
      const kp = pp * w;
      const kv = pv * w;
      const ka = pa * w;
      const mp = lpp * kp + lpv * kv + lpa * ka;
      const mv = lpv * kp + lvv * kv + lva * ka;
      const ma = lpa * kp + lva * kv + laa * ka;
      lpp += w - 2 * mp + kp * mp + kv * mv + ka * ma;
      lpv -= mv;
      lpa -= ma;
      for (let i = 0; i < axes; i++) {
        const fall = kp * adjoint[i]! + kv * adjoint[axes + i]! + ka * adjoint[2 * axes + i]!;
        adjoint[i] = adjoint[i]! - fall - positionInnovation[k * axes + i]! * w;
      }
    }
    const s0 = k * 3 * axes;
    for (let i = 0; i < axes; i++) {
      const gp = adjoint[i]!;
      const gv = adjoint[axes + i]!;
      const ga = adjoint[2 * axes + i]!;
      state[s0 + i] = state[s0 + i]! - (pp * gp + pv * gv + pa * ga);
      state[s0 + axes + i] = state[s0 + axes + i]! - (pv * gp + vv * gv + va * ga);
      state[s0 + 2 * axes + i] = state[s0 + 2 * axes + i]! - (pa * gp + va * gv + aa * ga);
    }
    positionVariance[k] = pp - quadratic(lpp, lpv, lpa, lvv, lva, laa, pp, pv, pa);
    velocityVariance[k] = vv - quadratic(lpp, lpv, lpa, lvv, lva, laa, pv, vv, va);
    if (k === 0) break;
    const d = seconds[k]! - seconds[k - 1]!;
    const h = 0.5 * d * d;
    // the jerk of the step as smoothed: its expected square over the assumed one, (g'Qg + free (3 - tr QL)) / (3 free)
    const q = noise.jerk * jerkShape[k]!;
    const qaa = q * d;
    const qva = q * h;
    const qvv = (qaa * d * d) / 3;
    const qpa = qvv / 2;
    const qpv = (qaa * d * d * d) / 8;
    const qpp = (qaa * h * h) / 5;
    let shown = free * (3 - qpp * lpp - qvv * lvv - qaa * laa - 2 * (qpv * lpv + qpa * lpa + qva * lva));
    for (let i = 0; i < axes; i++) {
      const gp = adjoint[i]!;
      const gv = adjoint[axes + i]!;
      const ga = adjoint[2 * axes + i]!;
      shown += quadratic(qpp, qpv, qpa, qvv, qva, qaa, gp, gv, ga);
      // through the step: g <- F' g
      adjoint[axes + i] = gv + d * gp;
      adjoint[2 * axes + i] = ga + d * gv + h * gp;
    }
    jerkShown[k] = shown / (3 * free);
    // L <- F' L F
    const fpv = lpp * d + lpv;
    const fpa = lpp * h + lpv * d + lpa;
    const fvv = lpv * d + lvv;
    const fva = lpv * h + lvv * d + lva;
    const faa = lpa * h + lva * d + laa;
    laa = h * fpa + d * fva + faa;
    lva = d * fpa + fva;
    lvv = d * fpv + fvv;
    lpa = fpa;
    lpv = fpv;
  }
}

/** x' L x for a symmetric L. */
function quadratic(
  lpp: number,
  lpv: number,
  lpa: number,
  lvv: number,
  lva: number,
  laa: number,
  p: number,
  v: number,
  a: number,
): number {
  return lpp * p * p + lvv * v * v + laa * a * a + 2 * (lpv * p * v + lpa * p * a + lva * v * a);
}

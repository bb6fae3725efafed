/** The top of a smooth hill in three dimensions, and how wide it is there. */

type Three = readonly [number, number, number];

export interface Top {
  readonly at: Three;
  readonly value: number;
  /** Standard deviations, if the hill is the log of a likelihood. */
  readonly sd: Three;
}

const MOST_STEPS = 40;
const ENOUGH = 1e-3;

/** Method: Newton's, with finite differences a tenth of `size` apart, the curvature lifted until it leads uphill. */
export function climb(hill: (at: Three) => number, start: Three, size: Three): Top {
  let at = start;
  let value = hill(at);
  let lift = 0.1;
  let curvature = curvatureAt(hill, at, value, size);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { slope, bend } = curvature;
    const move = solve(bend, slope, lift);
    const next = move && ([0, 1, 2].map((i) => at[i]! + clamp(move[i]!, 3) * size[i]!) as unknown as Three);
    const then = next ? hill(next) : Number.NEGATIVE_INFINITY;
    if (next && then > value) {
      const gained = then - value;
      at = next;
      value = then;
      lift = Math.max(1e-3, lift / 4);
      curvature = curvatureAt(hill, at, value, size);
      if (gained < ENOUGH) break;
    } else {
      lift *= 6;
      if (lift > 1e6) break;
    }
  }
  const sd = [0, 1, 2].map((i) => {
    const unit = [0, 0, 0];
    unit[i] = 1;
    let column: number[] | null = null;
    for (let raised = 0.01; !column; raised *= 4) column = solve(curvature.bend, unit, raised);
    return Math.sqrt(Math.max(0.01, column[i]!)) * size[i]!;
  }) as unknown as Three;
  return { at, value, sd };
}

const clamp = (x: number, most: number) => Math.max(-most, Math.min(most, x));

/** Slope and minus second derivatives, in units of `size`. */
function curvatureAt(hill: (at: Three) => number, at: Three, value: number, size: Three) {
  const h = 0.1;
  const moved = (i: number, a: number, j = -1, b = 0): number => {
    const p = [...at];
    p[i]! += a * h * size[i]!;
    if (j >= 0) p[j]! += b * h * size[j]!;
    return hill(p as unknown as Three);
  };
  const slope = [0, 0, 0];
  const bend = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  const up: number[] = [];
  for (let i = 0; i < 3; i++) {
    const a = moved(i, 1);
    const b = moved(i, -1);
    up.push(a);
    slope[i] = (a - b) / (2 * h);
    bend[i]![i] = -(a + b - 2 * value) / (h * h);
  }
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < i; j++) {
      const mixed = -(moved(i, 1, j, 1) - up[i]! - up[j]! + value) / (h * h);
      bend[i]![j] = mixed;
      bend[j]![i] = mixed;
    }
  return { slope, bend };
}

/** Cholesky of (bend + lift) x = b; null where that is not positive. */
function solve(bend: readonly (readonly number[])[], b: readonly number[], lift: number): number[] | null {
  const l = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (let i = 0; i < 3; i++)
    for (let j = 0; j <= i; j++) {
      let s = bend[i]![j]! + (i === j ? lift : 0);
      for (let k = 0; k < j; k++) s -= l[i]![k]! * l[j]![k]!;
      if (i === j) {
        if (!(s > 1e-9)) return null;
        l[i]![i] = Math.sqrt(s);
      } else l[i]![j] = s / l[j]![j]!;
    }
  const x = [0, 0, 0];
  for (let i = 0; i < 3; i++) {
    let s = b[i]!;
    for (let k = 0; k < i; k++) s -= l[i]![k]! * x[k]!;
    x[i] = s / l[i]![i]!;
  }
  for (let i = 2; i >= 0; i--) {
    let s = x[i]!;
    for (let k = i + 1; k < 3; k++) s -= l[k]![i]! * x[k]!;
    x[i] = s / l[i]![i]!;
  }
  return x;
}

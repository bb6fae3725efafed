/** Small square matrices in flat arrays, for the one step that needs an inverse: what is known without a turn. */

/** Product of two n by n matrices. */
export function times(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const v = a[i * n + k]!;
      if (v !== 0) for (let j = 0; j < n; j++) c[i * n + j] = c[i * n + j]! + v * b[k * n + j]!;
    }
  return c;
}

/** Matrix times vector. */
export function apply(a: Float64Array, x: Float64Array, n: number): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) y[i] = y[i]! + a[i * n + j]! * x[j]!;
  return y;
}

/** Solves a X = b for X, both n by n, by elimination with partial pivoting; null where a is singular. */
export function solve(a: Float64Array, b: Float64Array, n: number): Float64Array | null {
  const m = Float64Array.from(a);
  const x = Float64Array.from(b);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(m[r * n + c]!) > Math.abs(m[pivot * n + c]!)) pivot = r;
    const head = m[pivot * n + c]!;
    if (!(Math.abs(head) > 1e-300)) return null;
    if (pivot !== c)
      for (let j = 0; j < n; j++) {
        [m[c * n + j], m[pivot * n + j]] = [m[pivot * n + j]!, m[c * n + j]!];
        [x[c * n + j], x[pivot * n + j]] = [x[pivot * n + j]!, x[c * n + j]!];
      }
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const f = m[r * n + c]! / head;
      if (f === 0) continue;
      for (let j = 0; j < n; j++) {
        m[r * n + j] = m[r * n + j]! - f * m[c * n + j]!;
        x[r * n + j] = x[r * n + j]! - f * x[c * n + j]!;
      }
    }
  }
  for (let r = 0; r < n; r++) for (let j = 0; j < n; j++) x[r * n + j] = x[r * n + j]! / m[r * n + r]!;
  return x;
}

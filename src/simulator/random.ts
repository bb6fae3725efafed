/** Seeded random numbers: the same seed and the same name give the same flight on every machine. */

/** A stream of random numbers. */
export interface Random {
  /** Uniform, [0, 1), 32 bits. */
  uniform(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

const rotateLeft = (x: number, k: number): number => (x << k) | (x >>> (32 - k));

/**
 * The generator xoshiro128**, period 2^128 - 1.
 * Method: D. Blackman, S. Vigna, *Scrambled Linear Pseudorandom Number Generators*, ACM Transactions on
 * Mathematical Software 47(4), 2021, section 5 (their public-domain C code `xoshiro128starstar.c`).
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = rotateLeft(d, 11);
    return result;
  };
}

/**
 * A stream of its own for each named cause of noise, so that more gusts do not change the GPS errors.
 * Seeding: FNV-1a over the name (G. Fowler, L. C. Noll, K.-P. Vo, IETF draft-eastlake-fnv, section 2), joined with the
 * seed and spread over the four words by the finaliser of MurmurHash3 (A. Appleby, public-domain code).
 */
export function randomStream(seed: number, name: string): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`invalid seed: ${seed}`);
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  const word = (i: number): number => {
    let h = (hash ^ Math.imul(seed | 0, 0x9e3779b1) ^ Math.floor(seed / 2 ** 32)) + Math.imul(i, 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return (h ^ (h >>> 16)) | 0;
  };
  const next = xoshiro128([word(1), word(2), word(3), word(4) | 1]);
  const uniform = () => next() / 2 ** 32;
  let spare: number | null = null;
  /** Method: G. Marsaglia, T. A. Bray, *A Convenient Method for Generating Normal Variables*, SIAM Review 6(3), 1964. */
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const r = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * r;
        return u * r;
      }
    }
  };
  return { uniform, normal };
}

/** A number, or a range from which each flight draws its own, evenly. */
export type Drawn = number | readonly [low: number, high: number];

export function draw(value: Drawn, random: Random): number {
  const u = random.uniform(); // drawn always, so that fixing one value does not shift the others
  return typeof value === "number" ? value : value[0] + u * (value[1] - value[0]);
}

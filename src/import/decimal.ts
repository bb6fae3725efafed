/** Reads decimal numbers as files write them, strictly: what is not wholly a number is NaN, never a part of it. */

/** Exact in binary floating point: 10^k for k up to 22 (Clinger, "How to read floating point numbers accurately", 1990). */
const POWERS = Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));
/** 10^15 - 1 has 15 digits and is below 2^53, so a mantissa up to this length is an exact integer. */
const EXACT_DIGITS = 15;

const isSpace = (c: number): boolean => c === 32 || (c >= 9 && c <= 13) || c === 0xfeff || c === 0xa0;

/**
 * The number that `text` is, or NaN. Spaces around it are allowed; a sign, digits, one point and an exponent may
 * follow. Refused: nothing, a decimal comma ("51,5" is not 51), units, hexadecimal, Infinity.
 *
 * Method: up to 15 digits are gathered as an exact integer and divided by an exact power of ten, which is rounded
 * once and so equals `Number(text)`; longer ones go to `Number`.
 */
export function readDecimal(text: string): number {
  let end = text.length;
  let i = 0;
  while (i < end && isSpace(text.charCodeAt(i))) i++;
  while (end > i && isSpace(text.charCodeAt(end - 1))) end--;
  const start = i;
  let c = text.charCodeAt(i);
  const negative = c === 45;
  if (negative || c === 43) i++;
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; i < end; i++) {
    c = text.charCodeAt(i);
    if (c >= 48 && c <= 57) {
      mantissa = mantissa * 10 + (c - 48);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (c === 46 && decimals < 0) decimals = 0;
    else break;
  }
  if (digits === 0) return Number.NaN;
  if (i === end && digits <= EXACT_DIGITS) {
    const value = decimals > 0 ? mantissa / POWERS[decimals] : mantissa;
    return negative ? -value : value;
  }
  if (i < end && !isExponent(text, i, end)) return Number.NaN;
  const value = Number(text.slice(start, end));
  return Number.isFinite(value) ? value : Number.NaN;
}

/** An `e`, a sign or none, and one to three digits up to the end. */
function isExponent(text: string, at: number, end: number): boolean {
  if ((text.charCodeAt(at) | 32) !== 101) return false;
  let i = at + 1;
  const sign = text.charCodeAt(i);
  if (sign === 43 || sign === 45) i++;
  if (i >= end || end - i > 3) return false;
  for (; i < end; i++) {
    const c = text.charCodeAt(i);
    if (c < 48 || c > 57) return false;
  }
  return true;
}

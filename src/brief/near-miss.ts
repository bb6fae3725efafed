/** The word that was probably meant. */

/**
 * The known word nearest to what was written, or null when none is near: at most two slips of the finger
 * (one in words of up to four letters), or one word is the beginning of the other.
 * Method: Damerau, "A technique for computer detection and correction of spelling errors", CACM 7(3), 1964:
 * a letter more, less or other, or two neighbours swapped.
 */
export function nearMiss(written: string, known: readonly string[]): string | null {
  const lower = written.toLowerCase().slice(0, 60);
  let best: string | null = null;
  let bestSlips = lower.length <= 4 ? 2 : 3;
  for (const word of known) {
    const other = word.toLowerCase();
    const slips = slipsBetween(lower, other);
    if (slips < bestSlips) [best, bestSlips] = [word, slips];
  }
  if (best !== null) return best;
  const begins = (word: string) =>
    lower.length >= 3 && (word.toLowerCase().startsWith(lower) || lower.startsWith(word.toLowerCase()));
  return known.find((word) => word.length >= 3 && begins(word)) ?? null;
}

function slipsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const other = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + other);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) row[j] = Math.min(row[j]!, rows[i - 2]![j - 2]! + 1);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}

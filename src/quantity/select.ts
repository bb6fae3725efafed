/** The value that would stand at a place were the values in order, without putting them all in order. */

/**
 * Puts at `place` what belongs there, none above it before it and none below it after; values are moved, and none may be
 * NaN. Source: C. A. R. Hoare, "Algorithm 65: Find", CACM 4(7) (1961) 321-322; the middle of three parts the values
 * (R. Sedgewick, "Implementing Quicksort Programs", CACM 21(10) (1978), from memory). Time grows with the number of
 * values, where that of putting them in order grows faster.
 */
export function selectPlace(values: Float64Array, place: number): number {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const [a, b, c] = [values[low]!, values[(low + high) >> 1]!, values[high]!];
    const pivot = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    let [i, j] = [low, high];
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const moved = values[i]!;
      values[i++] = values[j]!;
      values[j--] = moved;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return values[place]!;
}
